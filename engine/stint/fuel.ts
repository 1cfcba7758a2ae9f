/** Fuel on board: burnt lap by lap from the last filling on. */
import type { Scenario } from '../scenario/schema.ts';
import type { Leg } from './legs.ts';

/** What was on board at the last filling and how many laps were driven since. */
export interface Tank {
  filled_kg: number;
  lapsSince: number;
  burn_kgPerLap: number;
}

/**
 * The tank as each leg begins. The first leg starts with the scenario's fuel; a leg whose phase sets the fuel starts with
 * what it sets, any other with what the leg before left.
 */
export function tanksOf(legs: Leg[], length_m: number): Tank[] {
  let filled_kg = legs[0]!.scenario.car.fuel_kg;
  let lapsSince = 0;
  return legs.map((leg) => {
    if (leg.refuelled) {
      filled_kg = leg.scenario.car.fuel_kg;
      lapsSince = 0;
    }
    const tank = { filled_kg, lapsSince, burn_kgPerLap: lapBurn(leg.scenario, length_m) };
    if (leg.kind !== 'stand') lapsSince += leg.laps;
    return tank;
  });
}

const lapBurn = ({ car }: Scenario, length_m: number): number =>
  (car.fuel_burn_kg_per_100km * (length_m / 1000)) / 100;

/** Fuel on board so many laps after the tank was looked at; never below none [kg] */
export const onBoard = ({ filled_kg, lapsSince, burn_kgPerLap }: Tank, laps: number): number =>
  Math.max(0, filled_kg - (lapsSince + laps) * burn_kgPerLap);
