import { describe, expect, it } from 'vitest';
import { printed } from '../../../engine/said.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { override } from '../../../engine/scenario/override.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Brake, Scenario } from '../../../engine/scenario/schema.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

type Friction = Brake['pad']['friction'];

function withFriction(friction: Friction, base: Scenario = defaultScenario()): Scenario {
  const { front } = base.brakes;
  return { ...base, brakes: { ...base.brakes, front: { ...front, pad: { ...front.pad, friction } } } };
}

const usual = defaultScenario();
const { friction } = usual.brakes.front.pad;
const fading: Friction = [
  { face_C: 100, coefficient: 0.5 },
  { face_C: 525, coefficient: 0.5 },
  { face_C: 625, coefficient: 0.25 },
];

describe('friction', () => {
  it('changes the pedal and no temperature', () => {
    const weak = friction.map(({ face_C, coefficient }) => ({ face_C, coefficient: coefficient * 0.6 }));
    const [one, ...others] = [friction, weak, fading].map((each) =>
      corner(driven(withFriction(each)), 'front'),
    );
    for (const other of others) {
      expect(other.columns).toEqual(one!.columns);
      expect(other.ledger_J).toEqual(one!.ledger_J);
    }
    expect(others[0]!.pedal!.highest).toBeCloseTo(one!.pedal!.highest, 9);
    expect(others[1]!.pedal!.highest).not.toBeCloseTo(one!.pedal!.highest, 2);
  });

  it('that is the same at all temperatures leaves the pedal alone', () => {
    const flat = fading.map(({ face_C }) => ({ face_C, coefficient: 0.42 }));
    const { pedal, stops } = corner(driven(withFriction(flat)), 'front');
    expect(pedal).toMatchObject({ highest: 1, lowest: 1 });
    expect(stops.every((stop) => stop.pedal.start === 1)).toBe(true);
  });
});

describe('the pedal', () => {
  const result = driven(withFriction(fading));
  const { pedal, stops, laps } = corner(result, 'front');
  const counted = laps.filter((lap) => lap.in !== null).map(({ lap }) => lap);
  const hard = stops.filter((stop) => stop.hard && counted.includes(stop.lap));

  it('is heaviest where the face is hottest when friction falls with heat', () => {
    const hottest = hard.reduce((a, b) => (b.peakFace_K > a.peakFace_K ? b : a));
    expect(pedal!.highest).toBe(Math.max(...hard.map((stop) => stop.pedal.highest)));
    expect(hottest.pedal.highest).toBe(pedal!.highest);
    expect(hard.some((stop) => stop.lap === pedal!.lap && stop.place === pedal!.place)).toBe(true);
  });

  it('is compared with the middle of the window, 525 °C here', () => {
    expect(pedal!.middle_K).toBeCloseTo(525 + 273.15, 9);
    expect(pedal!.lowest).toBe(1);
  });

  it('within a stop lies between its extremes', () => {
    for (const { pedal: at } of stops) {
      expect(at.start).toBeGreaterThanOrEqual(at.lowest);
      expect(at.start).toBeLessThanOrEqual(at.highest);
    }
  });

  it('is not spoken of where no hard stop is driven', () => {
    const slow = withPhases([{ kind: 'safety', laps: 3 }], 3, changed({ 'stint.safety_car_kmh': 60 }));
    expect(corner(driven(slow), 'front').pedal).toBeNull();
  });

  it('is called a guess where the face leaves what friction is known for', () => {
    const texts = (s: Scenario): string[] =>
      driven(s)
        .notices.filter(({ kind }) => kind === 'friction')
        .map(({ said }) => printed(said));
    expect(texts(withFriction(fading))).toEqual([
      expect.stringMatching(
        /^front: the face is at \d+ °C in hard stops, friction is given up to 625 °C only; the pedal beyond that is a guess$/,
      ),
    ]);
    const warm = fading.map((point) => ({ ...point, face_C: point.face_C + 500 }));
    expect(texts(withFriction(warm))).toEqual([expect.stringMatching(/friction is given from 600 °C only/)]);
    expect(texts(usual)).toEqual([]);
  });
});

describe('a list of friction is refused', () => {
  const told = (list: Friction): string[] => {
    const checked = checkScenario(withFriction(list));
    return checked.ok ? [] : checked.problems.map(problemLine);
  };

  it('once, at the first temperature that does not rise, and not when all do', () => {
    expect(told(friction)).toEqual([]);
    const [a, b, c] = fading as [Friction[0], Friction[0], Friction[0]];
    expect(told([a, c, b])).toEqual([
      'brakes.front.pad.friction.2.face_C: expected more than that of the point before it, 625, got 525',
    ]);
    expect(told([a, a, a])).toEqual([
      'brakes.front.pad.friction.1.face_C: expected more than that of the point before it, 100, got 100',
    ]);
  });

  it('in one value set by its key as well', () => {
    const set = override(usual, { 'brakes.front.pad.friction.1.face_C': 400 });
    expect(set.ok ? [] : set.problems.map(problemLine)).toEqual([
      'brakes.front.pad.friction.2.face_C: expected more than that of the point before it, 400, got 300',
    ]);
  });

  it('of one side by the side that has it', () => {
    const side = { pad: { friction: [fading[1], fading[0]] } };
    const checked = checkScenario({ ...usual, sides: { front_left: side } });
    expect(checked.ok ? [] : checked.problems.map(({ key }) => key)).toEqual([
      'sides.front_left.pad.friction.1.face_C',
    ]);
  });
});
