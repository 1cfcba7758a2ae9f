/** What a standing car's heat does: caliper and fluid go on rising while the disc cools. */
import type { CornerColumns } from '../disc/columns.ts';
import type { Brake } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';
import type { LapKind, Soak, SoakRise } from './result.ts';

/** A stop between laps is worth a look from this length on [s] */
const LONG_STOP_S = 60;
const MINUTE_S = 60;

interface Plan {
  plan: { steps: number };
}
export type SoakPassage = ({ kind: LapKind; lap: number } & Plan) | ({ kind: 'stand'; held: boolean } & Plan);

/** A stretch of standing: samples from the stop to the end, after which lap, and whether the brake was held. */
interface Standing {
  lap: number;
  from: number;
  to: number;
  held: boolean;
}

/** The soak after the last driven lap (null when the stint does not end standing), and in each stop of more than a minute. */
export function soaksOf(
  passages: readonly SoakPassage[],
  trace: CornerColumns,
  time_s: Float64Array,
  brake: Brake,
): { soak: Soak | null; stopSoaks: Soak[] } {
  const end = time_s.length - 1;
  const all = standingsOf(passages);
  const last = all.find(({ to }) => to === end);
  const of = (standing: Standing): Soak => soakIn(standing, trace, time_s, brake);
  const isLong = ({ from, to }: Standing): boolean => time_s[to]! - time_s[from]! > LONG_STOP_S;
  return {
    soak: last ? of(last) : null,
    stopSoaks: all.filter((standing) => standing !== last && isLong(standing)).map(of),
  };
}

/** Standing phases after a driven lap; phases that follow each other are one. */
function standingsOf(passages: readonly SoakPassage[]): Standing[] {
  const found: Standing[] = [];
  let lap = 0;
  let sample = 0;
  for (const passage of passages) {
    const to = sample + passage.plan.steps;
    if (passage.kind !== 'stand') lap = passage.lap;
    else if (lap > 0) {
      const open = found.at(-1);
      if (open?.to === sample) Object.assign(open, { to, held: open.held || passage.held });
      else found.push({ lap, from: sample, to, held: passage.held });
    }
    sample = to;
  }
  return found;
}

function soakIn(
  { lap, from, to, held }: Standing,
  trace: CornerColumns,
  time_s: Float64Array,
  brake: Brake,
): Soak {
  const caliper = riseOf(trace.caliper_K, time_s, from, to);
  const fluid = riseOf(trace.fluid_K, time_s, from, to);
  const disc = trace.cheek_K;
  const standing_s = time_s[to]! - time_s[from]!;
  const minute_K = valueAtTime(disc, time_s, from, to, time_s[from]! + MINUTE_S);
  return {
    lap,
    standing_s,
    brakeHeld: held,
    caliper,
    fluid,
    caliperMargin_K: kelvin(brake.caliper.caution_C) - caliper.peak_K,
    fluidMargin_K: kelvin(brake.fluid.wet_boiling_C) - fluid.peak_K,
    discStart_K: disc[from]!,
    discEnd_K: disc[to]!,
    discFirstMinute_K: minute_K === null ? null : disc[from]! - minute_K,
  };
}

/** The highest value while standing and when it comes; 0 s where it only falls. */
function riseOf(column: Float64Array, time_s: Float64Array, from: number, to: number): SoakRise {
  let top = from;
  for (let i = from; i <= to; i++) if (column[i]! > column[top]!) top = i;
  return {
    start_K: column[from]!,
    peak_K: column[top]!,
    rise_K: column[top]! - column[from]!,
    peakAfter_s: time_s[top]! - time_s[from]!,
  };
}

/** A column at a moment of the standing, straight between samples; null after its end. */
function valueAtTime(
  column: Float64Array,
  time_s: Float64Array,
  from: number,
  to: number,
  at_s: number,
): number | null {
  if (time_s[to]! < at_s) return null;
  let i = from + 1;
  while (i < to && time_s[i]! < at_s) i++;
  const share = (at_s - time_s[i - 1]!) / (time_s[i]! - time_s[i - 1]!);
  return column[i - 1]! + share * (column[i]! - column[i - 1]!);
}
