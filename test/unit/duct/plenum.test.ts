import { describe, expect, it } from 'vitest';
import { conductanceBlankedMouth } from '../../../engine/duct/loss-mouth.ts';
import { solvePlenum, type PlenumNode } from '../../../engine/duct/plenum.ts';
import { riseSolidBody } from '../../../engine/duct/pumping.ts';

const density_kgpm3 = 1.15;
const q_Pa = 0.5 * density_kgpm3 * 50 ** 2;
const hose_m2 = (Math.PI / 4) * 0.076 ** 2;
const rise_Pa =
  0.35 *
  riseSolidBody({ density_kgpm3, wheel_radps: 40 * Math.PI, outerRadius_m: 0.165, innerRadius_m: 0.1 });

/** Mouth of the hose's own area, friction 0.05 over 1.4 m, bends 0.6, no exit loss; vanes K 2, leak K 2.7. */
function node(f: number, leak_m2: number): PlenumNode {
  const g = conductanceBlankedMouth(f);
  const behind = (0.05 * 1.4) / 0.076 + 0.6;
  return {
    duct: { far_Pa: 0.9 * q_Pa, lossFree_m2: (hose_m2 * g) / Math.sqrt(1 + g * g * behind) },
    vanes: { far_Pa: -0.15 * q_Pa - rise_Pa, lossFree_m2: 0.003 / Math.sqrt(2) },
    leak: { far_Pa: -0.15 * q_Pa, lossFree_m2: leak_m2 / Math.sqrt(2.7) },
    density_kgpm3,
    wheelhouseDensity_kgpm3: density_kgpm3,
  };
}

// Network computed by an independent scipy root (brentq) of the same equations.
describe('a plenum with duct, vanes and leak', () => {
  it.each([
    [1, 0.0006, 705.947619, 0.11733405, 0.10052288],
    [0.75, 0.0006, 537.319618, 0.10662606, 0.09143057],
    [0.5, 0.0006, 222.927977, 0.08305041, 0.07145345],
    [0.25, 0.0006, -128.126124, 0.04354913, 0.03836907],
    [0.1, 0.0006, -235.013495, 0.01669014, 0.01912854],
    [0, 0.0006, -268.790979, 0, 0.00403785],
  ])('open %d, leak %d m²: the flows of an independent solution', (f, leak, plenum_Pa, duct, vane) => {
    const flows = solvePlenum(node(f, leak));
    expect(flows.plenum_Pa).toBeCloseTo(plenum_Pa, 4);
    expect(flows.duct_kgps).toBeCloseTo(duct, 7);
    expect(flows.vane_kgps).toBeCloseTo(vane, 7);
    expect(flows.leak_kgps).toBeCloseTo(duct - vane, 7);
  });

  it('draws air in through the leak, with the vanes below ambient, when the mouth is nearly shut', () => {
    const { leak_kgps, plenum_Pa } = solvePlenum(node(0.1, 0.0006));
    expect(leak_kgps).toBeLessThan(0);
    expect(plenum_Pa).toBeLessThan(-0.15 * q_Pa);
  });

  it('draws in less mass when the wheelhouse air is thinner', () => {
    const cold = solvePlenum(node(0, 0.0006));
    const warm = solvePlenum({ ...node(0, 0.0006), wheelhouseDensity_kgpm3: 0.9 * density_kgpm3 });
    expect(warm.vane_kgps / cold.vane_kgps).toBeCloseTo(Math.sqrt(0.9), 2);
  });

  // Closed form of two openings in series: ρ₁G₁² (p₁ − p) = ρ₂G₂² (p − p₂), by the density of the air that passes each.
  it.each([
    ['out of a mouth that is sucked on, from the vanes', { duct: -500, vanes: 0 }],
    ['out of the mouth, from a wheelhouse above the mouth’s pressure', { duct: 100, leak: 400 }],
    ['out of a gap into a wheelhouse in suction, below ambient all the way', { duct: -100, leak: -500 }],
  ])('passes air %s', (_, far: { duct: number; vanes?: number; leak?: number }) => {
    const open = (far_Pa: number | undefined, lossFree_m2: number) =>
      far_Pa === undefined ? { far_Pa: -10, lossFree_m2: 0 } : { far_Pa, lossFree_m2 };
    const wheelhouseDensity_kgpm3 = 0.8;
    const { plenum_Pa, duct_kgps } = solvePlenum({
      duct: open(far.duct, 0.002),
      vanes: open(far.vanes, 0.003),
      leak: open(far.leak, 0.001),
      density_kgpm3,
      wheelhouseDensity_kgpm3,
    });
    const from_Pa = far.vanes ?? far.leak!;
    const other = far.vanes === undefined ? 0.001 : 0.003;
    const comesIn = far.leak !== undefined && far.leak > far.duct;
    const a = density_kgpm3 * 0.002 ** 2;
    const b = (comesIn ? wheelhouseDensity_kgpm3 : density_kgpm3) * other ** 2;
    expect(plenum_Pa).toBeCloseTo((a * far.duct + b * from_Pa) / (a + b), 4);
    const size_kgps = Math.sqrt((2 * Math.abs(from_Pa - far.duct)) / (1 / a + 1 / b));
    expect(duct_kgps).toBeCloseTo(Math.sign(far.duct - from_Pa) * size_kgps, 7);
  });

  it('has no flow, and no NaN, where nothing drives one', () => {
    const still = { far_Pa: 0, lossFree_m2: 0.002 };
    const flows = solvePlenum({ ...node(1, 0.0006), duct: still, vanes: still, leak: still });
    expect(flows).toEqual({ duct_kgps: 0, vane_kgps: 0, leak_kgps: 0, plenum_Pa: 0 });
  });

  it('has no flow, and no NaN, where everything is shut', () => {
    const shut = (far_Pa: number) => ({ far_Pa, lossFree_m2: 0 });
    const flows = solvePlenum({ ...node(1, 0), duct: shut(900), vanes: shut(-300), leak: shut(-200) });
    expect(Object.values(flows).every(Number.isFinite)).toBe(true);
    expect(flows.duct_kgps).toBeCloseTo(0);
    expect(flows.vane_kgps).toBeCloseTo(0);
  });
});
