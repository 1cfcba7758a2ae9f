import { describe, expect, it } from 'vitest';
import { apart } from '../../bench/apart.ts';
import type { Allocated } from '../../support/allocation-child.ts';

describe('the kernel', () => {
  it('allocates nothing while it steps, dry or wet, once it is compiled', async () => {
    const flags = ['--expose-gc', '--max-semi-space-size=64', '--min-semi-space-size=64'];
    const { steps, bytes } = await apart<Allocated>('../support/allocation-child.ts', flags);
    expect(steps).toBeGreaterThan(5e5);
    expect(Math.min(...bytes) / steps).toBeLessThan(0.01);
  }, 120_000);
});
