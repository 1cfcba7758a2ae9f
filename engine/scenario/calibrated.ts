import type { Scenario } from './schema.ts';

/** Whether any measured run has corrected the model: a correction without a reason is none. */
export const isCalibrated = ({ correction }: Scenario): boolean =>
  [correction.heat, correction.cooling, correction.emissivity].some(
    ({ reason }) => !['', 'none'].includes(reason.trim()),
  );
