/** What a reader of the result must know: limits passed, ranges left, numbers that went wrong. Nothing is thrown in a run. */
import { said, type Quantity, type Said } from '../said.ts';
import { celsius, kelvin } from '../units.ts';
import type { StintModel } from './compile.ts';
import { blankingAt } from './corners.ts';
import { sizeDoubts } from './disc-sizes.ts';
import { labelDoubts } from './fluid-margin.ts';
import { legsOf } from './legs.ts';
import { beyondFriction } from './pedal.ts';
import { FAULT_K } from './pulls.ts';
import type { CornerResult, Notice, Pull, RangeUse } from './result.ts';
import { slowTrace } from './slow-trace.ts';
import { traceNotices } from './trace-notices.ts';

/** Blanking beyond this is out of practice: fluid, bearing and pad still need air. Common practice, no source [%] */
const OUT_OF_PRACTICE_PCT = 85;

export function noticesOf(model: StintModel, corners: CornerResult[], pulls: Pull[]): Notice[] {
  const { scenario, corners: models } = model;
  const found: Notice[] = pulls.filter(({ calls }) => calls !== 'nothing').map(pullNotice);
  found.push(...slowTrace(scenario), ...traceNotices(scenario));
  corners.forEach((corner, i) => {
    const {
      spec,
      corner: { brake },
    } = models[i]!;
    const name = corner.side === 'both' ? corner.axle : `${corner.axle} ${corner.side}`;
    const say = (kind: string, what: Said | string): void =>
      void found.push({ kind, said: said`${name}: ${what}` });
    if (![corner.facePeak_K, corner.fluidPeak_K, corner.ledger_J.residual].every(Number.isFinite)) {
      say('not finite', 'the run left the numbers the model can handle; do not use this result');
    }
    for (const left of corner.ranges.filter((range) => range.left)) say('range', leftRange(left));
    if (corner.padPeak_K > kelvin(brake.pad.limit_C)) {
      say(
        'pad',
        said`pads reach ${level(corner.padPeak_K)}, above their limit of ${limit(brake.pad.limit_C)}`,
      );
    }
    if (corner.caliperPeak_K > kelvin(brake.caliper.caution_C)) {
      say(
        'caliper',
        said`the caliper reaches ${level(corner.caliperPeak_K)}, above its caution of ${limit(brake.caliper.caution_C)}`,
      );
    }
    if (corner.fluidCall === 'act' || corner.fluidCall === 'do not run') {
      const act = corner.fluidCall === 'act' ? 'act' : 'do not run like this';
      say(
        'fluid',
        said`fluid peaks at ${level(corner.fluidPeak_K)}, ${difference(corner.fluidMargin_K)} from its wet boiling point: ${act}`,
      );
    }
    for (const doubt of labelDoubts(brake)) say('fluid label', doubt);
    for (const doubt of sizeDoubts(spec.disc)) say('sizes', doubt);
    const unknown = beyondFriction(corner, brake);
    if (unknown) say('friction', unknown);
    const most_pct = mostBlanked(model, corner);
    if (!brake.duct && most_pct > 0) {
      say('no duct', 'there is no duct to blank; its blanking changes nothing');
    }
    if (brake.duct && brake.disc.kind === 'solid') {
      say(
        'solid disc',
        "solid disc: almost nothing of the duct's air reaches it in the model; this span says little",
      );
    }
    if (brake.duct && most_pct > OUT_OF_PRACTICE_PCT) {
      say(
        'practice',
        `more than ${OUT_OF_PRACTICE_PCT} % blanked is out of practice: fluid, bearing and pads still need air`,
      );
    }
  });
  return found;
}

const level = (value_K: number): Quantity => ({ value: celsius(value_K), unit: '°C', digits: 0 });
const limit = (value_C: number): Quantity => ({ value: value_C, unit: '°C' });
const difference = (value_K: number): Quantity => ({ value: value_K, unit: 'K', digits: 0 });

function pullNotice({ axle, hotter, by_K, lap, calls }: Pull): Notice {
  const other = hotter === 'left' ? 'right' : 'left';
  const fault = calls === 'fault' ? said`; more than ${difference(FAULT_K)} apart is a fault` : '';
  const parted = said`${hotter} runs ${difference(by_K)} hotter than ${other} on lap ${lap}`;
  return { kind: 'pull', said: said`${axle}: ${parted}; unequal brakes pull the car${fault}` };
}

/** The most that any phase covers of a corner's mouth [%] */
function mostBlanked({ scenario }: StintModel, { axle, side }: CornerResult): number {
  return Math.max(...legsOf(scenario).map((leg) => blankingAt(leg.scenario, axle, side)));
}

/** Digits at most, where a range is left by very little. */
const MOST_DIGITS = 7;

/** The run used a law where nobody measured it. Three digits, or as many as it takes to see by how much. */
export function leftRange(range: RangeUse): Said {
  for (let digits = 3; ; digits++) {
    const say = (value: number): string => written(range, value, digits);
    const { low, high, from, to } = range;
    const hidden = (from < low && say(from) === say(low)) || (to > high && say(to) === say(high));
    if (!hidden || digits === MOST_DIGITS) return rangeText(range, say);
  }
}

const isLevel = ({ unit, quantity }: RangeUse): boolean => unit === 'K' && quantity === 'temperature';

function written(range: RangeUse, value: number, digits: number): string {
  const shown = isLevel(range) ? celsius(value) : value;
  return Math.abs(shown) >= 1e4
    ? shown.toExponential(digits - 2).replace('e+', 'e')
    : `${Number(shown.toPrecision(digits))}`;
}

/** What is used and where the law holds: numbers of a unit stay numbers, a pure one is printed. */
function rangeText(range: RangeUse, say: (value: number) => string): Said {
  const { law, quantity, low, high, from, to } = range;
  const unit = isLevel(range) ? '°C' : range.unit;
  const extent = (least: string, most: string): Quantity | string => {
    if (unit === '') return least === most ? least : `${least} to ${most}`;
    return { value: Number(least), ...(least !== most && { to: Number(most) }), unit };
  };
  const holds = extent(say(low), say(high));
  return said`${law}: ${quantity} ${extent(say(from), say(to))} where the law holds from ${holds}`;
}
