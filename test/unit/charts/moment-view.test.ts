import { describe, expect, it } from 'vitest';
import { airWay } from '../../../web/charts/air-way.ts';
import { cheekProfile } from '../../../web/charts/cheek-profile.ts';
import { MOMENT_LEAST_PX, momentLeaders, momentView as viewOf } from '../../../web/charts/moment-view.ts';

const momentView = (
  width: number,
  kind: 'vented' | 'solid',
  ring: Parameters<typeof viewOf>[2],
  tallest = 500,
) => viewOf({ width, tallest }, kind, ring);
const kinds = ['vented', 'solid'] as const;
const rings = [
  { outer_mm: 380, inner_mm: 250, cheek_mm: 9, gap_mm: 17 },
  { outer_mm: 260, inner_mm: 150, cheek_mm: 5, gap_mm: 0 },
  { outer_mm: 410, inner_mm: 310, cheek_mm: 14, gap_mm: 22 },
];
const cases = [MOMENT_LEAST_PX, 620, 900].flatMap((width) =>
  kinds.flatMap((kind) => rings.map((ring) => ({ width, kind, ring }))),
);

describe('the disc in section, large', () => {
  it.each(cases)('$kind at $width px stays inside, names apart', ({ width, kind, ring }) => {
    const view = momentView(width, kind, ring);
    expect(view.caliper[0].left).toBeGreaterThan(100);
    expect(view.plenum.left).toBeGreaterThan(100);
    const leaders = Object.values(momentLeaders(view, width));
    expect(leaders).toHaveLength(9);
    for (const leader of leaders) {
      expect(leader.x).toBeGreaterThanOrEqual(0);
      expect(leader.x + 94).toBeLessThanOrEqual(width);
      expect(leader.y).toBeGreaterThan(14);
      expect(leader.y + 20).toBeLessThan(view.height);
      const near = leaders.filter((other) => other !== leader && Math.abs(other.x - leader.x) < 94);
      for (const other of near) expect(Math.abs(other.y - leader.y)).toBeGreaterThanOrEqual(34);
    }
  });

  it('draws the ring to scale where there is room', () => {
    const { ring, gap, cheeks } = momentView(900, 'vented', rings[0]!);
    expect(ring.width / ring.height).toBeCloseTo(35 / 65, 6);
    expect(gap!.width / cheeks[0]!.width).toBeCloseTo(17 / 9, 6);
  });

  it('has a profile through face, mean and wall', () => {
    const profile = cheekProfile({ face_K: 900, cheek_K: 800, wall_K: 740 });
    expect(profile(0)).toBeCloseTo(900, 9);
    expect(profile(1)).toBeCloseTo(740, 9);
    const many = Array.from({ length: 1000 }, (_, i) => profile((i + 0.5) / 1000));
    expect(many.reduce((sum, each) => sum + each, 0) / 1000).toBeCloseTo(800, 3);
  });
});

describe('the way of the air', () => {
  const view = momentView(620, 'vented', rings[0]!);
  const flows = { duct_kgps: 0.13, vane_kgps: 0.1, leak_kgps: 0.03 };

  it('has ribbons as wide as their flows, on one scale', () => {
    const { duct, vanes, leak } = airWay(view, flows, 0.7);
    expect(duct!.width / leak!.width).toBeCloseTo(0.13 / 0.03, 6);
    expect(vanes!.width / leak!.width).toBeCloseTo(0.1 / 0.03, 6);
  });

  it('never fills the vanes beyond their gap', () => {
    const { vanes } = airWay(view, { ...flows, vane_kgps: 2 }, 0);
    expect(vanes!.width).toBeLessThan(view.gap!.width);
  });

  it('turns the leak round where warm air is drawn in', () => {
    const [out, back] = [0.03, -0.03].map((leak_kgps) => airWay(view, { ...flows, leak_kgps }, 1).leak!);
    expect(back!.path).toBe(out!.path);
    expect(back!.head).not.toBe(out!.head);
  });

  it('covers the mouth by the share that is blanked, and leaves out what is not there', () => {
    expect(airWay(view, flows, 0.25).blank!.height / airWay(view, flows, 1).blank!.height).toBeCloseTo(
      0.25,
      9,
    );
    expect(airWay(view, flows, null)).toMatchObject({ duct: null, walls: '', blank: null });
    expect(airWay(momentView(620, 'solid', rings[1]!), flows, 0).vanes).toBeNull();
    const still = airWay(view, { duct_kgps: 0, vane_kgps: 0, leak_kgps: 0 }, 0);
    expect([still.duct, still.vanes, still.leak]).toEqual([null, null, null]);
  });
});
