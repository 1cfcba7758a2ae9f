import { describe, expect, it } from 'vitest';
import type { Changes } from '../../../engine/scenario/override.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import { pinnedBlankings } from '../../../web/pages/stint/pinned-blankings.ts';
import { changed } from '../../support/stints.ts';

const now = changed({});
const front = { axle: 'front', side: 'both' } as const;
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

const found = (...changes: Changes[]) => {
  const pins = changes.map((change, dash) => ({ scenario: changed(change), dash }));
  const { marked, left } = pinnedBlankings(pins, now, front);
  return {
    marked: marked.map(({ name, dash, blanking_pct }) => [plain(name), dash, blanking_pct]),
    left: left.map(plain),
  };
};

describe('pinned runs on the map of all blankings', () => {
  it('are marked where only mouths differ, each in its dash', () => {
    expect(found({ 'blanking_pct.front': 50 }, { 'blanking_pct.rear': 10 })).toEqual({
      marked: [
        ['pinned 50 %', 0, 50],
        ['pinned at rear blanking 10 %', 1, now.blanking_pct.front],
      ],
      left: [],
    });
  });

  it.each([
    [{ 'conditions.ambient_C': 12 }, 'Pinned at ambient 12 °C is not drawn: it has another ambient.'],
    [
      { 'conditions.wet': true, 'blanking_pct.front': 50 },
      'Pinned 50 % is not drawn: it has another track, wet or dry.',
    ],
    [{ 'traffic.gap_m': 8 }, 'Pinned at gap to the car ahead 8 m is not drawn: it has other traffic.'],
    [
      { 'brakes.front.window.bite_C': 320 },
      /^Pinned at .* 320 °C is not drawn: it has other brakes or another window\.$/,
    ],
    [{ 'correction.heat.factor': 1.1 }, /is not drawn: it has another setting\.$/],
  ] as const)('are told of, with the reason, where another map is theirs: %o', (change, words) => {
    const { marked, left } = found(change);
    expect(marked).toEqual([]);
    expect(left).toEqual([typeof words === 'string' ? words : expect.stringMatching(words)]);
  });

  it('of another circuit or car are not drawn, and what is shown itself is not told of', () => {
    const pins = [shippedStint('club-evening'), now].map((scenario, dash) => ({ scenario, dash }));
    const { marked, left } = pinnedBlankings(pins, now, front);
    expect(marked).toEqual([]);
    expect(left).toEqual([expect.stringMatching(/it has another car\.$/)]);
  });

  it('are marked by the side in hand', () => {
    const split = changed({ 'blanking_pct.front_left': 40, 'blanking_pct.front_right': 60 });
    const at = (side: 'left' | 'right') =>
      pinnedBlankings([{ scenario: split, dash: 0 }], now, { axle: 'front', side }).marked[0]?.blanking_pct;
    expect([at('left'), at('right')]).toEqual([40, 60]);
  });
});
