import { describe, expect, it } from 'vitest';
import type { SafeSpan } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { proposedFor } from '../../../web/state/proposed.ts';
import { changed } from '../../support/stints.ts';

const span = (axle: 'front' | 'rear', blanking_pct: number, parts: Partial<SafeSpan> = {}): SafeSpan =>
  ({
    axle,
    side: 'both',
    span_pct: [50, 65],
    proposal: { blanking_pct, panel: null, hotMargin_K: 8, coldMargin_K: 9 },
    isIdle: false,
    before: null,
    ...parts,
  }) as SafeSpan;

describe('the scenario as it is proposed', () => {
  const scenario = defaultScenario();

  it('has what is proposed at every mouth where that is something else', () => {
    const proposed = proposedFor(scenario, [span('front', 60), span('rear', scenario.blanking_pct.rear)]);
    expect(proposed?.blanking_pct).toEqual({ ...scenario.blanking_pct, front: 60 });
    expect(scenario.blanking_pct.front).toBe(70);
  });

  it('is none where that is fitted, nothing is safe, or it decides no lap', () => {
    expect(proposedFor(scenario, [span('front', 70)])).toBeNull();
    expect(proposedFor(scenario, [span('front', 60, { span_pct: null })])).toBeNull();
    expect(proposedFor(scenario, [span('front', 60, { isIdle: true })])).toBeNull();
  });

  it('moves the side that it is about', () => {
    const uneven = changed({ 'blanking_pct.front_left': 40, 'blanking_pct.front_right': 50 });
    const proposed = proposedFor(uneven, [span('front', 60, { side: 'right' })]);
    expect(proposed?.blanking_pct).toMatchObject({ front: 70, front_left: 40, front_right: 60 });
  });
});
