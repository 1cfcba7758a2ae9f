import { describe, expect, it } from 'vitest';
import type { Changes } from '../../../engine/scenario/override.ts';
import { changed, driven, settled } from '../../support/stints.ts';

const behind = (changes: Changes = {}) =>
  driven(changed({ 'stint.laps': 9, 'traffic.gap_m': 9, ...changes }));
const peak = (changes: Changes = {}): number => settled(behind(changes), 'front').faceMax_K;

describe('the place in the wake', () => {
  const inLine = peak();
  const clear = peak({ 'traffic.gap_m': null });

  it('two metres aside is nearer to clear air, in heat and in speed', () => {
    const aside = behind({ 'traffic.offset_m': 2 });
    expect(settled(aside, 'front').faceMax_K).toBeLessThan(inLine - 5);
    expect(settled(aside, 'front').faceMax_K).toBeGreaterThan(clear);
    expect(aside.topSpeed_mps).toBeLessThan(behind().topSpeed_mps - 0.3);
  });

  it('far aside is clear air', () => {
    expect(peak({ 'traffic.offset_m': 5 })).toBeCloseTo(clear, 0);
  });

  it('without a wake there is still the tow, and heat from arriving faster only', () => {
    const none = behind({ 'traffic.wake_strength': 0 });
    expect(none.topSpeed_mps).toBe(behind().topSpeed_mps);
    expect(settled(none, 'front').faceMax_K).toBeLessThan(inLine - 5);
    expect(peak({ 'traffic.wake_strength': 2 })).toBeGreaterThan(inLine + 5);
  });
});
