import { shownTemperature, trueTemperature } from '../../../engine/evidence/infrared.ts';
import type { Compute } from '../gate.ts';

/** Forwards, and backwards from the published reading. */
export const compute: Compute = (rows) =>
  rows.map(
    ({
      true_K = NaN,
      emissivity = NaN,
      reflected_K = NaN,
      set = NaN,
      low_um = NaN,
      high_um = NaN,
      shown_K = NaN,
    }) => {
      const sensor = { band: { low_m: low_um * 1e-6, high_m: high_um * 1e-6 }, set, reflected_K };
      return {
        shown_K: shownTemperature(true_K, emissivity, sensor),
        true_K: trueTemperature(shown_K, emissivity, sensor),
      };
    },
  );
