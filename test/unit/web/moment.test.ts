import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/default-scenario.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { followByHand } from '../../../engine/shell/hand.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import type { CornerResult, Scenario, StintResult } from '../../../engine/index.ts';
import { airAt as airIn, airNote, airParts, phaseAt } from '../../../web/display/air-words.ts';
import { momentSummary, momentTakeaway, partsAt } from '../../../web/display/moment-parts.ts';
import { handMoment, linesOf, modelWords, type NumberKey } from '../../../web/display/whence.ts';
import { placed } from '../../../web/pages/stint/note-place.ts';
import { followed } from '../../../web/state/followed.ts';
import { changed, withPhases } from '../../support/stints.ts';

const scenario = defaultScenario();
const result = run(compile(scenario, { driven: null }));
const front = result.corners[0]!;
const sample = result.laps[9]!.firstSample + 100;
const speed_mps = result.clock.speed_mps[sample]!;
const airAt = (corner: CornerResult, at_mps: number) => airIn(corner, { index: 0 }, at_mps);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the air at a speed', () => {
  it('is what the rows say at theirs, and in proportion between them and beyond', () => {
    const row = front.air[7]!;
    for (const factor of [0.1, 0.93, 1, 1.04, 3]) {
      const at = airAt(front, row.speed_mps * factor)!;
      expect(at.duct_kgps).toBeCloseTo(row.ductFlow_kgps * factor, 9);
      expect(at.vane_kgps).toBeCloseTo(row.vaneFlow_kgps * factor, 9);
      expect(at.plenum_Pa).toBeCloseTo(row.plenum_Pa * factor ** 2, 6);
      expect(at.clear).toBeNull();
      expect(at.ram_Pa! / front.pressures!.ram_Pa).toBeCloseTo(
        ((row.speed_mps * factor) / front.pressures!.speed_mps) ** 2,
        9,
      );
    }
  });

  it('parts into vanes and leak, with nothing lost', () => {
    const { duct_kgps, vane_kgps, leak_kgps } = airAt(front, speed_mps)!;
    expect(vane_kgps + leak_kgps).toBeCloseTo(duct_kgps, 9);
  });

  it('says that it is in clear air, or that nothing drives it', () => {
    expect(plain(airNote(airAt(front, 50)!, phaseAt(result, 500)))).toBe(
      'Air of this corner at 180 km/h, in clear air.',
    );
    expect(airNote(airAt(front, 0)!, phaseAt(result, 500))).toMatch(/^The car stands/);
  });
});

describe('the air behind a car ahead', () => {
  const ran = (of: Scenario): StintResult => run(compile(of, { driven: null }));
  const driven = (changes: Changes): StintResult => ran(changed(changes));
  const noteOf = (of: StintResult, at_mps: number): string => {
    const phase = phaseAt(of, of.laps[9]!.start_s)!;
    return plain(airNote(airIn(of.corners[0]!, phase, at_mps)!, phase));
  };

  it('is told with both figures, and in the table and the paragraph by how much it is less', () => {
    const behind = driven({ 'traffic.gap_m': 8 });
    const air = airIn(behind.corners[0]!, { index: 0 }, 50)!;
    const [now, clear] = [air, air.clear!].map(({ duct_kgps }) => Math.round(duct_kgps * 1000));
    const less = Math.round(100 * (1 - air.duct_kgps / air.clear!.duct_kgps));
    expect(less).toBeGreaterThan(8);
    expect(noteOf(behind, 50)).toBe(
      `Air of this corner at 180 km/h behind the car ahead: ${now} g/s through mouth and hose, ${less} % less than in clear air (${clear} g/s).`,
    );
    const rows = airParts(air, 'vented');
    expect(plain(rows.find(({ key }) => key === 'duct')!.change)).toBe(`${less} % less`);
    expect(plain(momentSummary(front, [], rows))).toContain(
      `mouth and hose ${now} g/s (${less} % less than in clear air)`,
    );
    expect(air.clear!.duct_kgps).toBeCloseTo(airAt(front, 50)!.duct_kgps, 9);
  });

  it('is the mean of a lap that is partly behind it, and clear beside it', () => {
    const phase = (more: object) =>
      ran(withPhases([{ kind: 'push', laps: 12, gap_m: 8, ...more }], 12, scenario));
    const flow = (of: StintResult): number => airIn(of.corners[0]!, { index: 0 }, 60)!.duct_kgps;
    const [all, half, beside] = [phase({}), phase({ traffic_share: 0.5 }), phase({ pull_out_kmh: 60 })];
    expect(flow(half)).toBeCloseTo((flow(all) + airAt(front, 60)!.duct_kgps) / 2, 9);
    expect(noteOf(half, 60)).toContain('behind the car ahead, the mean of 50 % of the lap behind it: ');
    expect(noteOf(beside, 80)).toMatch(/, as in clear air: the car ahead takes nothing of it here\.$/);
  });

  it.each([{ 'traffic.gap_m': 8 }, { 'traffic.gap_s': 0.6 }])('is that of the run: %o', (changes) => {
    const reply = followByHand({ scenario: changed(changes), driven: null });
    if (reply.kind !== 'by hand') throw new Error(reply.message);
    const lines = reply.corners[0]!.byHand!.parts.flatMap((part) => part.lines);
    const given = (equation: string, symbol: string): number =>
      lines.find((line) => line.equation === equation)!.given.find((one) => one.symbol === symbol)!.value;
    const air = airIn(driven(changes).corners[0]!, { index: 0 }, given('q = ½ ρ V² r', 'V'))!;
    expect(air.duct_kgps).toBeCloseTo(
      lines.find(({ equation }) => equation === 'ṁ = A √(2 ρ Δp)')!.found.value,
      9,
    );
  });

  it('follows what a phase sets: its tape and its day', () => {
    const taped = withPhases(
      [
        { kind: 'push', laps: 6 },
        { kind: 'push', laps: 6, set: { 'blanking_pct.front': 20 } },
      ],
      12,
      scenario,
    );
    const [before, after] = [0, 1].map((index) => airIn(ran(taped).corners[0]!, { index }, 50));
    expect(before!.duct_kgps).toBeCloseTo(airAt(front, 50)!.duct_kgps, 9);
    expect(after!.duct_kgps).toBeGreaterThan(1.5 * before!.duct_kgps);
  });
});

describe('the moment as a list', () => {
  it('has every part of a vented disc, and calls hot what is past its limit', () => {
    const parts = partsAt(front, sample, 'vented');
    expect(parts.map(({ name }) => name)).toEqual([
      'face',
      'core',
      'vane wall',
      'rim',
      'bell',
      'pad',
      'caliper',
      'fluid',
      'wheelhouse air',
    ]);
    const hot = partsAt({ ...front, window: { ...front.window, facePeak_K: 500 } }, sample, 'vented');
    expect(parts[0]!.isHot).toBe(front.columns!.face_K[sample]! > front.window.facePeak_K);
    expect(hot.filter(({ isHot }) => isHot).map(({ name }) => name)).toEqual(['face']);
    expect(partsAt(front, sample, 'solid')[2]!.name).toBe('mid-plane');
  });

  it('has no vanes in a solid disc, no mouth without a duct, and turns the name of a leak that draws in', () => {
    const air = airAt(front, speed_mps)!;
    expect(airParts(air, 'vented').map(({ key }) => key)).toEqual(['ram', 'duct', 'plenum', 'vanes', 'leak']);
    expect(airParts({ ...air, ram_Pa: null }, 'vented').map(({ key }) => key)).toEqual([
      'plenum',
      'vanes',
      'leak',
    ]);
    expect(airParts({ ...air, ram_Pa: null }, 'solid')).toEqual([]);
    expect(airParts({ ...air, duct_kgps: 0 }, 'vented')[1]!.value).toBe('0\u00a0g/s');
    expect(airParts({ ...air, leak_kgps: -0.01 }, 'vented').at(-1)).toMatchObject({
      name: 'leak, drawn in',
      value: '10\u00a0g/s',
    });
  });

  it('is told in a sentence and in a paragraph', () => {
    expect(momentTakeaway('Lap 10, turn 7', front, sample)).toMatch(
      /^Lap 10, turn 7: front face \d+\s°C, \d+\sK (over|under) its limit$|below bite$/,
    );
    const parts = partsAt(front, sample, 'vented');
    expect(momentSummary(front, parts, airParts(airAt(front, speed_mps)!, 'vented'))).toMatch(
      /^Front: face\s\d+\s°C, .*wheelhouse air\s\d+\s°C\. Air: .*leak, lost\s[\d.]+\sg\/s\.$/,
    );
  });
});

describe('where a number comes from', () => {
  const reply = followByHand({ scenario, driven: null });
  if (reply.kind !== 'by hand') throw new Error(reply.message);
  const hand = reply.corners[0]!.byHand!;
  const equations = (key: NumberKey): string[] => linesOf(key, hand).map(({ equation }) => equation);

  it.each<[NumberKey, string[]]>([
    ['face_K', ['ΔT = p(Fo) q₀ L / k,  Fo = α t / L²', 'T = T₁ + ΔT']],
    ['cheek_K', ['ΔT = γ Q₁ / (m c)', 'T = T₀ + P / ΣG']],
    ['wall_K', ['G = ṁc (1 − exp(−H/ṁc))']],
    ['rim_K', ['G = G₁ + 1/(1/G₂ + 1/G₃)']],
    ['bell_K', ['G = G₁ + 1/(1/G₂ + 1/G₃)']],
    ['pad_K', ['G = 1/(1/G₁ + 1/G₂ + 1/G₃)']],
    ['caliper_K', ['G = 1/(1/G₁ + 1/G₂ + 1/G₃)']],
    ['fluid_K', []],
    ['wheelhouse_K', []],
    ['ram', ['q = ½ ρ V² r']],
    ['duct', ['ζ = (1.707 − f)² / f²', 'ṁ = A √(2 ρ Δp)']],
    ['vanes', ['ṁ = A √(2 ρ Δp)', 'Re = (ṁ/A) d / μ']],
    ['leak', ['ṁ = A √(2 ρ Δp)']],
    ['plenum', ['ṁ = A √(2 ρ Δp)']],
  ])('%s has its lines of the calculation by hand', (key, wanted) => {
    expect(equations(key)).toEqual(wanted);
    expect(modelWords(key)).toMatch(/\.$/);
  });

  it('says where no check reaches a number that no line comes near', () => {
    for (const key of ['fluid_K', 'wheelhouse_K'] as const) expect(modelWords(key)).toContain('No check');
  });

  it('says for which stop the lines are', () => {
    expect(handMoment(hand)).toContain(`${hand.place}, lap\u00a0${hand.lap}`);
  });
});

describe('following by hand', () => {
  const failure = { kind: 'failure', message: 'broken' } as const;

  it('is done once for a scenario, and its worker is closed', async () => {
    let [asked, closed] = [0, 0];
    const open = () => ({
      followByHand: () => Promise.resolve(followByHand({ scenario, driven: null })),
      close: () => void closed++,
    });
    const doors = () => (asked++, open());
    const [first, second] = await Promise.all([followed(scenario, doors), followed(scenario, doors)]);
    expect(first).toBe(second);
    expect([asked, closed]).toEqual([1, 1]);
  });

  it('that fails is told, and tried again', async () => {
    const other = { ...scenario };
    let asked = 0;
    const open = () => ({
      followByHand: () => (asked++ === 0 ? Promise.reject(new Error('broken')) : Promise.resolve(failure)),
      close: () => undefined,
    });
    expect(await followed(other, open)).toEqual(failure);
    await followed(other, open);
    expect(asked).toBe(2);
  });
});

describe('the place of a note', () => {
  const window = { innerWidth: 390, innerHeight: 800 };
  const at = (left: number, top: number) => placed({ left, right: left + 60, top, bottom: top + 24 }, window);

  it('is inside the window, however near a side the number is', () => {
    for (const left of [0, 160, 330]) {
      const note = at(left, 100);
      expect(note.left).toBeGreaterThanOrEqual(12);
      expect(note.left + note.width).toBeLessThanOrEqual(378);
    }
  });

  it('is on the side with more room, touches the number, and is no taller than that', () => {
    expect(at(100, 100)).toMatchObject({ top: 124, bottom: null, tallest: 664 });
    expect(at(100, 700)).toMatchObject({ top: null, bottom: 100, tallest: 688 });
  });
});
