import { nusseltVanes } from '../../../engine/disc/nusselt-vane.ts';
import type { Compute } from '../gate.ts';

const SLOWEST_RPM = 342;
/** The rotor's size is not in the abstract. In passages of 13 mm this Re gives the 27 W/(m² K) that were measured at 342 rev/min. */
const SLOWEST_RE = 1550;
const passage = { diameterOverLength: 0.2, enhancement: 1.9 };

/** An undriven rotor: the flow, and with it Re, follows the speed. */
export const compute: Compute = (rows) =>
  rows.map(({ rpm = NaN }) => {
    const at = (speed: number): number => nusseltVanes((SLOWEST_RE * speed) / SLOWEST_RPM, 0.7, passage);
    return { ratio: at(rpm) / at(SLOWEST_RPM) };
  });
