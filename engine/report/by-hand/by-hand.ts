/**
 * The main numbers of one corner by hand, so that a reader can follow them to their sources with a pocket calculator: the
 * hottest stop of the laps that count, the air at that lap's mean speed, and the balance of that lap.
 *
 * These lines are not what the model computes: they are the closed forms that it must come near to, beside what it has.
 */
import { dynamicPressureRatioWake } from '../../air/wake.ts';
import type { CornerModel, StintModel } from '../../stint/compile.ts';
import { airPath } from '../../stint/corner-air.ts';
import { airPathOf, blankingAt } from '../../stint/corners.ts';
import { gapAt, legsOf } from '../../stint/legs.ts';
import type { LapPassage } from '../../stint/passages.ts';
import type { CornerResult, LapSummary, StintResult } from '../../stint/result.ts';
import { airByHand, type HandConductances } from './air-by-hand.ts';
import { of, type HandLine, type HandPart } from './hand-line.ts';
import { stopByHand, type HandStop } from './stop-by-hand.ts';

export interface ByHand {
  lap: number;
  place: string;
  parts: HandPart[];
}

/** The calculation for one corner of a result with columns; null where no lap was driven with the brakes on. */
export function byHand(model: StintModel, result: StintResult, index: number): ByHand | null {
  const corner = model.corners[index]!;
  const found = result.corners[index]!;
  const lap = found.laps.find((one) => one.lap === found.verdict.hotLap) ?? found.laps.at(-1);
  const passage = model.passages.find((p): p is LapPassage => p.kind !== 'stand' && p.lap === lap?.lap);
  const stop = lap && passage && hottestStop(found, result, passage);
  if (!lap || !passage || !stop) return null;
  const air = lapAir(model, corner, passage, lap);
  return {
    lap: lap.lap,
    place: stop.stop.place,
    parts: [
      { title: 'The hottest stop', lines: stopByHand(corner, model.scenario.car.rotational_factor, stop) },
      { title: 'The air', lines: air.lines },
      { title: 'The lap', lines: balance(corner, passage, lap, air.conductances) },
    ],
  };
}

function hottestStop(
  { stops, columns }: CornerResult,
  { clock }: StintResult,
  passage: LapPassage,
): HandStop | null {
  const own = stops.filter(({ lap }) => lap === passage.lap);
  const stop = own.reduce<(typeof own)[number] | null>(
    (top, next) => (top && top.peakFace_K >= next.peakFace_K ? top : next),
    null,
  );
  const plan = stop && passage.plan.stops[own.indexOf(stop)];
  if (!plan || !columns) return null;
  const sampleAt = (time_s: number): number => clock.time_s.findIndex((t) => t >= time_s - 1e-9);
  const bulkRise_K = columns.cheek_K[sampleAt(stop.end_s)]! - columns.cheek_K[sampleAt(stop.start_s)]!;
  return { passage, plan, stop, bulkRise_K };
}

function lapAir(model: StintModel, { corner, spec }: CornerModel, passage: LapPassage, lap: LapSummary) {
  const { scenario, gap } = legsOf(model.scenario)[passage.leg]!;
  const flows = airPath({ corner, scenario, gap });
  const speed_mps = passage.plan.end_m.at(-1)! / passage.plan.duration_s;
  const at = speed_mps / flows.speed_mps[1]!;
  const i = Math.floor(at);
  const between = (column: Float64Array): number =>
    column[i]! + (at - i) * ((column[i + 1] ?? column[i]!) - column[i]!);
  const gap_m = gapAt(gap, speed_mps);
  return airByHand(spec, airPathOf(corner.brake, spec), {
    speed_mps,
    disc_K: lap.bulkMean_K,
    day: passage.day,
    openFraction: 1 - blankingAt(scenario, corner.axle, corner.side) / 100,
    qRatio: Number.isFinite(gap_m)
      ? dynamicPressureRatioWake({
          gap_m,
          offset_m: scenario.traffic.offset_m,
          dragArea_m2: scenario.traffic.car_ahead_drag_area_m2,
          strength: scenario.traffic.wake_strength,
        })
      : 1,
    duct_kgps: between(flows.duct_kgps),
    vane_kgps: between(flows.vane_kgps),
    leak_kgps: between(flows.leak_kgps),
    cooling: scenario.correction.cooling.factor,
  });
}

/** A settled lap: what comes in goes out, so the disc stands above the air by power over conductance. */
function balance(
  { corner, spec, shares }: CornerModel,
  { plan, leg, massRatio, day }: LapPassage,
  lap: LapSummary,
  { vanes_WpK, faces_WpK, radiation_WpK, edgeAndBell_WpK }: HandConductances,
): HandLine[] {
  const heat_J = plan.axles[corner.axle].dt_s.reduce(
    (sum, dt, n) =>
      sum + (dt * (plan.axles[corner.axle].powerStart_W[n]! + plan.axles[corner.axle].powerEnd_W[n]!)) / 2,
    0,
  );
  const mean_W = (shares[leg]! * massRatio * heat_J) / plan.duration_s;
  const all_WpK = vanes_WpK + faces_WpK + radiation_WpK + edgeAndBell_WpK;
  return [
    {
      what: 'Mean power of this brake over the lap',
      equation: 'P = Q / t',
      given: [of('Q', 'energy', mean_W * plan.duration_s), of('t', 'time', plan.duration_s)],
      found: of('P', 'power', mean_W),
      model: null,
      source: 'definition',
      check: null,
    },
    {
      what: 'Where a settled disc stands, by these ways out',
      equation: 'T = T₀ + P / ΣG',
      given: [of('T₀', 'temperature', day.ambient_K), of('ΣG', 'conductance', all_WpK)],
      found: of('T', 'temperature', day.ambient_K + mean_W / all_WpK),
      model: of('bulk, lap’s mean', 'temperature', lap.bulkMean_K),
      source:
        'energy balance; pads and caliper take some more, and the face, hotter than the bulk, gives more',
      check: 'lumped-cooling',
    },
    {
      what: 'How fast it follows a change of tape',
      equation: 'τ = m c / ΣG,  c about 650 J/(kg K)',
      given: [of('m', 'mass', spec.disc.ringMass_kg), of('ΣG', 'conductance', all_WpK)],
      found: of('τ', 'time', (spec.disc.ringMass_kg * 650) / all_WpK),
      model: null,
      source: 'lumped body',
      check: 'lumped-cooling',
    },
  ];
}
