/** The ends between which a sensor may show one temperature of a face, for what is not known of sensor and face. */
import type { Sensor } from '../scenario/sensor-schema.ts';
import { kelvin } from '../units.ts';
import { shownTemperature, type Band } from './infrared.ts';

/** What the usual sensor at a brake takes in (common practice, no source). */
const USUAL_BAND: Band = { low_m: 8e-6, high_m: 14e-6 };

/**
 * Lowest and highest that a sensor may show of a face.
 *
 *     rubbing: T + Δ,  infrared: ε_set B(T_shown) + (1 − ε_set) B(T_refl) = ε B(T) + (1 − ε) B(T_refl), each at both ends of Δ and ε
 *
 * @remarks
 * Without lag: what moves is followed first (`laggedReading`). A rubbing thermocouple is heated by its own rubbing and cooled
 * along its arm, so it is off by what a comparison tells. Source: that of `shownTemperature`; the offset is common practice, no source.
 *
 * @param face_K - of the face [K]
 * @param sensor - as the event describes it
 * @returns lowest and highest shown [K]
 *
 * @example
 * shownBetween(773.15, { kind: 'infrared', lag_s: 0, set_emissivity: 0.95, face_emissivity: { low: 0.75, high: 0.95 }, mirrored_C: 30, off_K: { low: 0, high: 0 } })[0] // => 701.23
 */
export function shownBetween(face_K: number, sensor: Sensor): [low: number, high: number] {
  const { kind, off_K, set_emissivity, face_emissivity, mirrored_C } = sensor;
  if (kind === 'rubbing') return [face_K + off_K.low, face_K + off_K.high];
  const as = { band: USUAL_BAND, set: set_emissivity, reflected_K: kelvin(mirrored_C) };
  return [
    shownTemperature(face_K, face_emissivity.low, as),
    shownTemperature(face_K, face_emissivity.high, as),
  ];
}
