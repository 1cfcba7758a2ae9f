/** Where along the duct the pressure of a corner is lost, and how far the flow's laws are stretched. */
import { machThrough, narrowestArea, reynoldsHose } from '../duct/duct-numbers.ts';
import { solveAirPath } from '../duct/network.ts';
import { pressureDrops } from '../duct/pressure-drops.ts';
import type { Scenario } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import { wakeAt } from './corner-air.ts';
import { airPathOf, blankingAt, specOf, type Corner } from './corners.ts';
import { dayOf } from './day.ts';
import { clearAir, type Gap } from './legs.ts';
import type { DuctPressures } from './result.ts';

/** Speed at which they are told; all grow with its square, so their shares hold at any [km/h] */
const TOLD_AT_KMH = 150;

/** In clear air, blanked as the stint starts; null without a duct. */
export function ductPressures(corner: Corner, scenario: Scenario): DuctPressures | null {
  const solved = solvedAt(corner, scenario, { speed_mps: mpsFromKmh(TOLD_AT_KMH), gap: clearAir });
  if (!solved) return null;
  const { geometry, state, flows } = solved;
  return { speed_mps: state.speed_mps, ...pressureDrops(geometry, state, flows) };
}

/** Mach number in the narrowest place and Reynolds number in the hoses at a speed, behind the gap's car; null without a duct. */
export function ductNumbers(
  corner: Corner,
  scenario: Scenario,
  speed_mps: number,
  gap: Gap,
): { mach: number; hoseReynolds: number } | null {
  const solved = solvedAt(corner, scenario, { speed_mps, gap });
  if (!solved) return null;
  const { geometry, state, flows } = solved;
  const { ambient_K: air_K, density_kgpm3 } = dayOf(scenario.conditions);
  const area_m2 = narrowestArea(geometry, state.openFraction);
  const duct_kgps = Math.abs(flows.duct_kgps);
  return {
    mach: area_m2 > 0 ? machThrough(duct_kgps, area_m2, { density_kgpm3, air_K }) : 0,
    hoseReynolds: reynoldsHose(geometry, duct_kgps, air_K),
  };
}

function solvedAt(
  { brake, axle, side }: Corner,
  scenario: Scenario,
  { speed_mps, gap }: { speed_mps: number; gap: Gap },
) {
  if (!brake.duct) return null;
  const radius_m = scenario.car.loaded_radius_m;
  const geometry = airPathOf(brake, specOf(brake, radius_m));
  const state = {
    openFraction: 1 - blankingAt(scenario, axle, side) / 100,
    density_kgpm3: dayOf(scenario.conditions).density_kgpm3,
    qRatio: wakeAt(scenario, gap, speed_mps).qRatio,
    speed_mps,
    wheel_radps: speed_mps / radius_m,
  };
  return { geometry, state, flows: solveAirPath(geometry, state) };
}
