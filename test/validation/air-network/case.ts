import { lossFriction } from '../../../engine/duct/hose.ts';
import { lossBlankedMouth } from '../../../engine/duct/loss-mouth.ts';
import { solvePlenum } from '../../../engine/duct/plenum.ts';
import { riseSolidBody } from '../../../engine/duct/pumping.ts';
import type { Compute, Row } from '../gate.ts';

/** A hose of 76 mm and 1.4 m with bends of 0.6, passages of 30 cm², a leak of 6 cm². */
const HOSE_M = 0.076;
const DENSITY = 1.15;
const lossFree = (area_m2: number, loss: number): number => area_m2 / Math.sqrt(loss);

export const compute: Compute = (rows) => rows.map(node);

function node({ open = NaN, speed = NaN, rpm = NaN, wheelhouse = NaN }: Row): Row {
  const q_Pa = 0.5 * DENSITY * speed ** 2;
  const wheel_radps = (rpm * 2 * Math.PI) / 60;
  const rotor = { density_kgpm3: DENSITY, wheel_radps, outerRadius_m: 0.165, innerRadius_m: 0.1 };
  const hoseLoss = lossBlankedMouth(open) + lossFriction(0.05, 1.4, HOSE_M) + 0.6;
  const { plenum_Pa, duct_kgps, vane_kgps, leak_kgps } = solvePlenum({
    duct: { far_Pa: 0.9 * q_Pa, lossFree_m2: lossFree((Math.PI / 4) * HOSE_M ** 2, hoseLoss) },
    vanes: { far_Pa: -0.15 * q_Pa - 0.35 * riseSolidBody(rotor), lossFree_m2: lossFree(0.003, 2) },
    leak: { far_Pa: -0.15 * q_Pa, lossFree_m2: lossFree(0.0006, 2.7) },
    density_kgpm3: DENSITY,
    wheelhouseDensity_kgpm3: wheelhouse,
  });
  return { plenum: plenum_Pa, duct: duct_kgps, vanes: vane_kgps, leak: leak_kgps };
}
