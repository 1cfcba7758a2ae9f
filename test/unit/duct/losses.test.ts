import { describe, expect, it } from 'vitest';
import { signedRoot } from '../../../engine/duct/flow-law.ts';
import { frictionChurchill, frictionColebrook } from '../../../engine/duct/friction.ts';
import { flattenedRange, lossFlattened, shareFlattened } from '../../../engine/duct/flattened.ts';
import { compressionRange, frictionCompressedHose, hoseReynoldsRange } from '../../../engine/duct/hose.ts';
import { areaLeak, LOSS_SHARP_GAP } from '../../../engine/duct/leak.ts';
import { lossContraction, lossExpansion } from '../../../engine/duct/loss-area-change.ts';
import { conductanceBlankedMouth, lossBlankedMouth } from '../../../engine/duct/loss-mouth.ts';
import { riseEuler, riseSolidBody, slipWiesner } from '../../../engine/duct/pumping.ts';

describe('a blanked mouth', () => {
  it('loses more the more it is taped, and never less than a sharp entrance', () => {
    const losses = [1, 0.9, 0.7, 0.5, 0.3, 0.1].map(lossBlankedMouth);
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    expect(losses[0]).toBeCloseTo(0.5, 3);
  });

  it('has as conductance one over the root of its loss, and 0 when shut', () => {
    expect(conductanceBlankedMouth(0.3) ** -2).toBeCloseTo(lossBlankedMouth(0.3), 10);
    expect(conductanceBlankedMouth(0)).toBe(0);
  });
});

describe('sections', () => {
  it('that do not change lose nothing', () => {
    expect([lossExpansion(1), lossContraction(1)]).toEqual([0, 0]);
  });

  it('that open into or out of a large space lose 1 and 0.5', () => {
    expect([lossExpansion(0), lossContraction(0)]).toEqual([1, 0.5]);
  });
});

describe('hose and leak', () => {
  it('stretched and round are as given', () => {
    expect(frictionCompressedHose(0.05, 0)).toBe(0.05);
    expect(shareFlattened(1)).toBe(1);
  });

  it('a shortening by 15 to 20 % makes two and a half to four times the friction with slopes of 10 to 15', () => {
    expect(frictionCompressedHose(1, 0.15, 10)).toBeCloseTo(2.5);
    expect(frictionCompressedHose(1, 0.2, 15)).toBeCloseTo(4);
  });

  // Pressure drops grow about fourfold at a moderate compression and nearly tenfold beyond (Abushakra et al., Weaver and Culp).
  it('within its range grows by no more than was measured', () => {
    expect(frictionCompressedHose(1, 0.25)).toBeCloseTo(4, 10);
    const most = frictionCompressedHose(1, compressionRange.high / 100);
    expect(most).toBeGreaterThan(4);
    expect(most).toBeLessThan(10);
  });

  it('are rough enough that the friction factor hardly follows speed', () => {
    for (const roughness of [0.01, 0.03, 0.05]) {
      const factors = [hoseReynoldsRange.low * 3, 1e5, 3e5].map((Re) => frictionColebrook(Re, roughness));
      expect(Math.max(...factors) / Math.min(...factors)).toBeLessThan(1.1);
      expect(factors[1]).toBeGreaterThan(0.035);
      expect(factors[1]).toBeLessThan(0.075);
      expect(frictionChurchill(1e5, roughness) / factors[1]!).toBeCloseTo(1, 1);
    }
  });

  it('flattened costs more the flatter it is, steeply below half', () => {
    const losses = [1, 0.8, 0.6, 0.5, 0.4, flattenedRange.low].map((flat) => lossFlattened(flat, 0.06, 2.6));
    losses.slice(1).forEach((loss, i) => expect(loss).toBeGreaterThan(losses[i]!));
    expect(losses[0]).toBeCloseTo(0.06 * 2.6, 10);
    expect(losses[5]! / losses[3]!).toBeGreaterThan(3);
  });

  it('a gap leaks like a free jet of 0.61 of its area', () => {
    expect(areaLeak(1, 0.001)).toBe(0.001);
    expect(LOSS_SHARP_GAP).toBeCloseTo(((Math.PI + 2) / Math.PI) ** 2, 1);
  });
});

describe('friction factors', () => {
  it("satisfies Colebrook's own equation", () => {
    for (const [Re, e] of [
      [4000, 0],
      [3e4, 0.02],
      [1e6, 0.001],
    ] as const) {
      const f = frictionColebrook(Re, e);
      const right = -2 * Math.log10(e / 3.7 + 2.51 / (Re * Math.sqrt(f)));
      expect(1 / Math.sqrt(f)).toBeCloseTo(right, 7);
    }
  });

  it('is 64/Re in laminar flow', () => {
    expect(frictionChurchill(800, 0.01) * 800).toBeCloseTo(64, 2);
  });
});

describe('signed root', () => {
  it('is odd, and crosses zero with a finite slope', () => {
    expect(signedRoot(-4, 0)).toBe(-2);
    expect(signedRoot(0, 0)).toBe(0);
    expect(signedRoot(1e-12, 1e-4) / 1e-12).toBeCloseTo(100, 4);
  });
});

describe('pumping', () => {
  it('grows with the square of wheel speed and vanishes without vanes to span', () => {
    const rotor = { density_kgpm3: 1.2, wheel_radps: 100, outerRadius_m: 0.19, innerRadius_m: 0.13 };
    const rise_Pa = riseSolidBody(rotor);
    expect(riseSolidBody({ ...rotor, wheel_radps: 200 })).toBeCloseTo(4 * rise_Pa, 8);
    expect(riseSolidBody({ ...rotor, innerRadius_m: 0.19 })).toBe(0);
  });

  it('is bounded by the Euler rise', () => {
    const rotor = { density_kgpm3: 1.2, wheel_radps: 100, outerRadius_m: 0.19, innerRadius_m: 0.13 };
    expect(riseSolidBody(rotor)).toBeLessThan(riseEuler(1.2, 19, slipWiesner(48)));
  });

  // Whatever share of the solid-body rise a scenario states, the air cannot gain more than Euler's equation allows.
  it.each([
    ['380 mm, 60 vanes', 0.19, 0.128, 60],
    ['290 mm, 40 vanes', 0.145, 0.093, 40],
    ['a disc open to its axle', 0.165, 0.001, 30],
  ])('in full stays under the Euler rise of %s', (_, outerRadius_m, innerRadius_m, vanes) => {
    const rotor = { density_kgpm3: 1.2, wheel_radps: 180, outerRadius_m, innerRadius_m };
    const euler_Pa = riseEuler(1.2, 180 * outerRadius_m, slipWiesner(vanes));
    expect(riseSolidBody(rotor) / euler_Pa).toBeLessThan(0.6);
    expect(riseSolidBody(rotor) / euler_Pa).toBeGreaterThan(0.2);
  });

  // Other authors' slip for 36 radial vanes: Stodola 1 − π/Z, Stanitz 1 − 0.63 π/Z.
  it("has a slip between Stodola's and Stanitz's for 36 vanes", () => {
    expect(slipWiesner(36)).toBeGreaterThan(1 - Math.PI / 36);
    expect(slipWiesner(36)).toBeLessThan(1 - (0.63 * Math.PI) / 36);
  });

  // By hand: √sin 30° = 0.70711, 12^0.7 = 5.6941.
  it('slips less where the vanes lean, as the root of the sine', () => {
    expect(slipWiesner(12, Math.PI / 6)).toBeCloseTo(1 - 0.70711 / 5.6941, 4);
  });
});
