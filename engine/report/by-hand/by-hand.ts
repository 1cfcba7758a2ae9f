/**
 * The main numbers of one corner by hand, so that a reader can follow them to their sources with a pocket calculator: the
 * hottest stop of the laps that count, the air at that lap's mean speed, and the balance of that lap.
 *
 * These lines are not what the model computes: they are the closed forms that it must come near to, beside what it has.
 */
import { valueAtTemperature } from '../../disc/materials/material.ts';
import { materials } from '../../disc/materials.ts';
import type { CornerModel, StintModel } from '../../stint/compile.ts';
import { airPath, wakeAt } from '../../stint/corner-air.ts';
import { airPathOf, blankingAt } from '../../stint/corners.ts';
import { clearAir, legsOf, type Gap } from '../../stint/legs.ts';
import type { LapPassage } from '../../stint/passages.ts';
import type { CornerResult, LapSummary, StintResult } from '../../stint/result.ts';
import { airByHand } from './air-by-hand.ts';
import type { AirPathMap } from '../../duct/air-path-map.ts';
import { of, type HandLine, type HandPart } from './hand-line.ts';
import { stopByHand, type HandStop } from './stop-by-hand.ts';

export interface ByHand {
  lap: number;
  place: string;
  /** The number that is followed: the face at its hottest in that stop [K] */
  peakFace_K: number;
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
    peakFace_K: stop.stop.peakFace_K,
    parts: [
      { title: 'The hottest stop', lines: stopByHand(corner, model.scenario, stop) },
      { title: 'The air', lines: air.lines },
      { title: 'The lap', lines: balance(corner, passage, { lap, ...air }) },
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

function lapAir(model: StintModel, corner: CornerModel, passage: LapPassage, lap: LapSummary) {
  const { scenario, gap } = legsOf(model.scenario)[passage.leg]!;
  const { plan, day } = passage;
  const { brake, axle, side } = corner.corner;
  const speed_mps = plan.end_m.at(-1)! / plan.duration_s;
  const wake = wakeAt(scenario, gap, speed_mps);
  const flowsIn = (air: Gap) => flowsAt(airPath({ corner: corner.corner, scenario, gap: air }), speed_mps);
  const [clear, behind] = [flowsIn(clearAir), flowsIn(gap)];
  // a lap partly behind a car: the mean of both airs by time
  const mean = (a: number, b: number): number => a + wake.weight * (b - a);
  const air_K = day.ambient_K + wake.weight * wake.warmth_K;
  const pressed_s = plan.dt_s.reduce((sum, dt, n) => sum + dt * plan.pressed[n]!, 0);
  return {
    air_K,
    ...airByHand(corner.spec, airPathOf(brake, corner.spec), {
      speed_mps,
      disc_K: lap.bulkMean_K,
      day,
      air_K,
      openFraction: 1 - blankingAt(scenario, axle, side) / 100,
      qRatio: mean(1, wake.qRatio),
      behind: wake.weight,
      duct_kgps: mean(clear.duct_kgps, behind.duct_kgps),
      vane_kgps: mean(clear.vane_kgps, behind.vane_kgps),
      leak_kgps: mean(clear.leak_kgps, behind.leak_kgps),
      cooling: scenario.correction.cooling.factor,
      emissivity: scenario.correction.emissivity.factor,
      pressedShare: pressed_s / plan.duration_s,
    }),
  };
}

/** The flows at a speed, between two of the grid. */
function flowsAt(path: AirPathMap, speed_mps: number) {
  const at = speed_mps / path.speed_mps[1]!;
  const i = Math.min(Math.floor(at), path.speed_mps.length - 2);
  const between = (column: Float64Array): number => column[i]! + (at - i) * (column[i + 1]! - column[i]!);
  return {
    duct_kgps: between(path.duct_kgps),
    vane_kgps: between(path.vane_kgps),
    leak_kgps: between(path.leak_kgps),
  };
}

/** A settled lap: what comes in goes out, so the disc stands above the air by power over conductance. */
function balance(
  { corner, spec, shares }: CornerModel,
  { plan, leg, massRatio }: LapPassage,
  { lap, air_K, all_WpK }: { lap: LapSummary; air_K: number; all_WpK: number },
): HandLine[] {
  const heat_J = plan.axles[corner.axle].dt_s.reduce(
    (sum, dt, n) => sum + dt * plan.axles[corner.axle].power_W[n]!,
    0,
  );
  const mean_W = (shares[leg]! * massRatio * heat_J) / plan.duration_s;
  const material = materials[spec.disc.material];
  const c = valueAtTemperature(material, material.heatCapacity, lap.bulkMean_K);
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
      given: [of('T₀', 'temperature', air_K, 'air'), of('ΣG', 'conductance', all_WpK, 'all ways out above')],
      found: of('T', 'temperature', air_K + mean_W / all_WpK),
      model: of('bulk, lap’s mean', 'temperature', lap.bulkMean_K),
      source:
        'energy balance; left out are the wheelhouse’s warmth and how much hotter than the bulk the face is: within 25\u00a0K on the shipped stints',
      check: 'lumped-cooling',
    },
    {
      what: 'How fast it follows a change of tape',
      equation: 'τ = m c / ΣG',
      given: [
        of('m', 'mass', spec.disc.ringMass_kg),
        of('c', 'heat capacity', c, 'at the lap’s mean bulk'),
        of('ΣG', 'conductance', all_WpK),
      ],
      found: of('τ', 'time', (spec.disc.ringMass_kg * c) / all_WpK),
      model: null,
      source: 'lumped body',
      check: 'lumped-cooling',
    },
  ];
}
