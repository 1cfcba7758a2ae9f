/** The sensor that the discs are watched by at an event: what is told of it, so that limits can be given as it reads them. */
import * as v from 'valibot';
import { choice, quantity } from './field.ts';
import { objectOf } from './object-of.ts';

const EMISSIVITY = [0.1, 1, 0.01] as const;
const OFF = [-150, 150, 5] as const;

const emissivity = (which: string) =>
  quantity(`Emissivity of the face, ${which}`, EMISSIVITY, 'Of what the spot sees, within 8 to 14 µm');
const off = (which: string) =>
  quantity(`Reads over the face, ${which}`, OFF, 'Heated by its rubbing, cooled along its arm');

/** What is left out is usual for oxidised iron and a rubbing arm (common practice, no source). */
export const sensorSchema = objectOf('a sensor', {
  kind: choice('Sensor', ['infrared', 'rubbing'], 'Sees the face, or rubs on it'),
  lag_s: quantity('Lag', [0, 5, 0.05], 'After so long it has met 63 % of a step'),
  /** Of an infrared one. */
  set_emissivity: v.optional(quantity('Emissivity set', EMISSIVITY, 'As the sensor is set'), 0.95),
  face_emissivity: v.optional(
    objectOf('an emissivity', { low: emissivity('lowest'), high: emissivity('highest') }),
    { low: 0.8, high: 0.85 },
  ),
  mirrored_C: v.optional(quantity('Mirrored', [-30, 300, 5], 'What is mirrored in the face'), 40),
  /** Of a rubbing one; negative where it reads low. */
  off_K: v.optional(objectOf('an offset', { low: off('least'), high: off('most') }), { low: -20, high: 20 }),
});

export type Sensor = v.InferOutput<typeof sensorSchema>;
export type SensorKind = Sensor['kind'];
