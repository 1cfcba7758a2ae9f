/** What stands on the run sheet: what is known of the stint in words, and boxes for what is written in by hand. Pure. */
import type { Axle, CornerResult, Quantiles, Scenario, StintResult } from '../../engine/index.ts';
import { cornerInView } from '../display/corner.ts';
import type { FoundSpread } from '../display/doubt-words.ts';
import { EXAMPLE_WORDS, isExampleWindow } from '../display/example-window.ts';
import { decimal, levelNumber, limitNumber, NBSP, percent, withUnit } from '../display/format.ts';
import { taped } from '../../engine/scenario/mouth.ts';
import { mouthWords } from '../display/mouth-words.ts';
import { fittedWords } from '../display/tape-words.ts';
import { unitName } from '../display/units.ts';

/** A labelled box; without a text it is written in by hand. */
interface Box {
  label: string;
  text: string;
}

const blank = (label: string): Box => ({ label, text: '' });

/** "2026-11-26": the same in every country. */
export const dateWords = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');

/** The boxes at the head of the sheet, row by row. */
export function headRows(scenario: Scenario, date: Date): Box[][] {
  const { conditions, car, stint } = scenario;
  return [
    [blank('Event'), blank('Session'), blank('Run'), { label: 'Date', text: dateWords(date) }],
    [
      { label: scenario.trace ? 'Trace' : 'Circuit and direction', text: circuitWords(scenario) },
      { label: 'Car', text: car.name },
      blank('Driver'),
      { label: 'Laps, fuel', text: `${decimal(stint.laps)} laps, ${withUnit(car.fuel_kg, 'kg')}` },
    ],
    [
      { label: 'Ambient, humidity', text: airWords(scenario) },
      { label: 'Track', text: `${conditions.wet ? 'wet' : 'dry'}; temperature:` },
      blank('Air pressure'),
      blank('Wind'),
    ],
  ];
}

const airWords = ({ conditions: { ambient_C, humidity_pct } }: Scenario): string =>
  `${withUnit(ambient_C, '°C')}, ${percent(humidity_pct)}`;

/** "Sorrelby, clockwise" */
function circuitWords({ trace, circuit }: Scenario): string {
  if (trace) return trace.name;
  const turned = circuit.segments.reduce((sum, { length_m, radius_m, turn }) => {
    const angle = radius_m ? length_m / radius_m : 0;
    return sum + (turn === 'right' ? angle : turn === 'left' ? -angle : 0);
  }, 0);
  const way = turned === 0 ? '' : `, ${turned > 0 ? 'clockwise' : 'anticlockwise'}`;
  return `${circuit.name}${way}`;
}

interface Wheel {
  axle: Axle;
  side: 'left' | 'right';
  name: string;
  corner: CornerResult;
}

/** All four, left before right, as far as they were computed. */
export const wheelsOf = (result: StintResult): Wheel[] =>
  (['front', 'rear'] as const).flatMap((axle) =>
    (['left', 'right'] as const).flatMap((side) => {
      const corner = cornerInView(result, axle, side);
      return corner ? [{ axle, side, name: `${axle} ${side}`, corner }] : [];
    }),
  );

/** A row of the table: its name, and for each wheel what is in its boxes. */
interface Row {
  name: string;
  /** What each box of a wheel is for. */
  parts: readonly string[];
  /** One for each wheel; empty where it is written in by hand. */
  cells: string[][];
}

/** What is fitted, what is predicted, and what will have been measured. */
export function wheelRows(scenario: Scenario, result: StintResult, spread: FoundSpread): Row[] {
  const wheels = wheelsOf(result);
  const row = (name: string, parts: readonly string[], of: (wheel: Wheel) => string[] = () => []): Row => ({
    name,
    parts,
    cells: wheels.map((wheel) => {
      const texts = of(wheel);
      return parts.map((_, i) => texts[i] ?? '');
    }),
  });
  const [mm, degrees] = [unitName('mm'), unitName('°C')];
  const levels = [`face peak, ${degrees}`, `coldest stop, ${degrees}`];
  return [
    row('Disc', ['serial', `thickness, ${mm}`]),
    row('Disc and pads', ['heat cycles', 'bedding']),
    row('Pads', ['serial', `thickness, ${mm}`]),
    row('Fluid', ['which', 'opened on']),
    row('Duct', ['mouth and panel'], (wheel) => [ductWords(scenario, wheel)]),
    row('Window', [`face, ${degrees}`, `bulk to, ${degrees}`], ({ corner: { window } }) => [
      `${limitNumber(window.bite_K)} to ${limitNumber(window.facePeak_K)}`,
      limitNumber(window.bulk_K),
    ]),
    row('Predicted', levels, ({ corner }) => predicted(corner)),
    row(`Middle 80${NBSP}%`, levels, ({ corner }) => doubt(corner, spread)),
    row('Measured', levels),
    row('Difference', levels),
  ];
}

/** "110 × 100 mm, 70 %, 2 strips of 38 mm" */
function ductWords(scenario: Scenario, { axle, side }: Wheel): string {
  const { duct } = scenario.brakes[axle];
  if (!duct) return 'none';
  const share = scenario.blanking_pct[`${axle}_${side}`] ?? scenario.blanking_pct[axle];
  const words = [mouthWords(duct), percent(share)];
  return [...words, fittedWords(share, taped(duct))].filter(Boolean).join(', ');
}

const predicted = ({ verdict: { facePeak_K, coldestStop_K } }: CornerResult): string[] => [
  levelNumber(facePeak_K),
  coldestStop_K === null ? 'none' : levelNumber(coldestStop_K),
];

/** Of the laps that decide: what four of five drawn runs stay within. */
function doubt({ axle, side, verdict }: CornerResult, found: FoundSpread): string[] {
  if (found === null || typeof found === 'string') return ['not known', 'not known'];
  const laps = found.corners.find((each) => each.axle === axle && each.side === side)?.laps ?? [];
  const [hot, cold] = [verdict.hotLap, verdict.coldLap].map((lap) => laps.find((each) => each.lap === lap));
  return [between(hot?.facePeak_K), between(cold?.coldestStop_K)];
}

const between = (of: Quantiles | null | undefined): string =>
  of ? `${levelNumber(of.p10)} to ${levelNumber(of.p90)}` : 'not known';

/** "Front 400 to 650 °C, bulk to 600 °C: given by ..., 2026-01-01." One line where both come from the same. */
export function windowLines(scenario: Scenario): string[] {
  if (isExampleWindow(scenario)) return [`Window: ${EXAMPLE_WORDS}.`];
  const said = (['front', 'rear'] as const).map((axle) => {
    const { source, date } = scenario.brakes[axle].window;
    return `${source}${date ? `, ${date}` : ''}`;
  });
  const [front = '', rear = ''] = said;
  return front === rear
    ? [`Window given by ${front}.`]
    : [`Window, front, given by ${front}; rear, ${rear}.`];
}

/** One line each; common practice, no source. */
export const CAUTIONS = [
  "The supplier's data rule. A competent person releases the car.",
  'Unequal left and right pull the car: compare both sides before every run.',
  'No step of more than 15\u00a0% of blanking between runs without confirming it.',
  'Panels: no sharp edges, tethered, heat-proof, too large to be drawn into the duct or the wheel.',
  'Hot parts, brake dust, solvent, knife: let it cool, wear what protects you.',
] as const;
