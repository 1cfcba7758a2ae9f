import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/default-scenario.ts';
import { override } from '../../../engine/scenario/override.ts';
import { followByHand } from '../../../engine/shell/hand.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import type { CornerResult, Scenario } from '../../../engine/index.ts';
import {
  airAt,
  airNote,
  airParts,
  momentSummary,
  momentTakeaway,
  partsAt,
} from '../../../web/display/moment-parts.ts';
import { handMoment, linesOf, modelWords, type NumberKey } from '../../../web/display/whence.ts';
import { placed } from '../../../web/pages/stint/note-place.ts';
import { followed } from '../../../web/state/followed.ts';

const scenario = defaultScenario();
const result = run(compile(scenario, { driven: null }));
const front = result.corners[0]!;
const sample = result.laps[9]!.firstSample + 100;
const speed_mps = result.clock.speed_mps[sample]!;

describe('the air at a speed', () => {
  it('is what the rows say at theirs, and in proportion between them and beyond', () => {
    const row = front.air[7]!;
    expect(airAt(front, row.speed_mps)).toMatchObject({
      duct_kgps: row.ductFlow_kgps,
      vane_kgps: row.vaneFlow_kgps,
      plenum_Pa: row.plenum_Pa,
    });
    for (const factor of [0.1, 0.93, 1.04, 3]) {
      const at = airAt(front, row.speed_mps * factor)!;
      expect(at.duct_kgps).toBeCloseTo(row.ductFlow_kgps * factor, 9);
      expect(at.plenum_Pa).toBeCloseTo(row.plenum_Pa * factor ** 2, 6);
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

  it('says that it is in clear air, and what it leaves out at this moment', () => {
    const noteIn = (of: Scenario, corner: CornerResult, time_s: number, speed = speed_mps): string =>
      airNote({ result, scenario: of, corner, air: airAt(corner, speed)!, time_s });
    expect(noteIn(scenario, front, 500)).toMatch(/^Air of this corner at \d+\skm\/h, in clear air\.$/);
    expect(noteIn(scenario, front, 500, 0)).toMatch(/^The car stands/);
    const taped = override(scenario, { 'blanking_pct.front': 40 });
    if (!taped.ok) throw new Error('40 %: refused');
    expect(noteIn(taped.scenario, front, 500)).toMatch(/that of 40\s% blanked.*now it is 70\s%/);
    const behind = { ...result, phases: result.phases.map((phase) => ({ ...phase, gap: GAP })) };
    const note = airNote({ result: behind, scenario, corner: front, air: airAt(front, 50)!, time_s: 500 });
    expect(note).toContain('Behind the car ahead less comes in');
  });
});

const GAP = { gap_m: 10, gap_s: null, share: 1, pullOut_mps: null, tow: true };

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
      const { left: away, width } = at(left, 100);
      expect(left + away).toBeGreaterThanOrEqual(12);
      expect(left + away + width).toBeLessThanOrEqual(378);
    }
  });

  it('is on the side with more room, and no taller than that', () => {
    expect(at(100, 100)).toMatchObject({ isAbove: false, tallest: 664 });
    expect(at(100, 700)).toMatchObject({ isAbove: true, tallest: 688 });
  });
});
