/** What is watched of each shipped stint, rounded to what a reader would notice. */
import { celsius } from '../../engine/units.ts';
import { shipped } from '../support/shipped.ts';
import { driven, settled } from '../support/stints.ts';

export type Watched = Record<string, Record<string, number>>;

const tenth = (value: number): number => Math.round(value * 10) / 10;

export function watchedNow(): Watched {
  return Object.fromEntries(
    shipped.map(([id, scenario]) => {
      const result = driven(scenario);
      const numbers: Record<string, number> = {
        lapTime_s: tenth(result.lapTime_s),
        brakeEnergyPerLap_kJ: tenth(result.brakeEnergyPerLap_J / 1000),
      };
      for (const axle of ['front', 'rear'] as const) {
        const corner = result.corners.find((one) => one.axle === axle)!;
        const lap = settled(result, axle);
        numbers[`${axle}_facePeak_C`] = tenth(celsius(corner.facePeak_K));
        numbers[`${axle}_settledPeak_C`] = tenth(celsius(lap.faceMax_K));
        if (lap.coldestStop_K !== null) numbers[`${axle}_coldestStop_C`] = tenth(celsius(lap.coldestStop_K));
        numbers[`${axle}_fluidPeak_C`] = tenth(celsius(corner.fluidPeak_K));
      }
      return [id, numbers];
    }),
  );
}
