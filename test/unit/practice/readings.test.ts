import { describe, it } from 'vitest';
import { shownTemperature } from '../../../engine/evidence/infrared.ts';
import { celsius, kelvin } from '../../../engine/units.ts';
import { corner } from '../../support/stints.ts';
import { bothCars, expectWithin } from '../../support/trade.ts';

describe.each(bothCars)(
  'what paint and sensors show, $name car (common practice, no source)',
  ({ result }) => {
    const { facePeak_K, columns } = corner(result, 'front');
    const rim_K = columns!.rim_K.reduce((top, T) => Math.max(top, T));

    it('rim paint reads well under the face peak', () => expectWithin(facePeak_K - rim_K, [60, 120]));

    // set for a black body, on iron that is well oxidised
    it.each([0.8, 0.85])('an infrared sensor set to .95 reads low on iron of %d', (emissivity) => {
      const sensor = { band: { low_m: 8e-6, high_m: 14e-6 }, set: 0.95, reflected_K: kelvin(30) };
      expectWithin(celsius(rim_K) - celsius(shownTemperature(rim_K, emissivity, sensor)), [20, 70]);
    });
  },
);
