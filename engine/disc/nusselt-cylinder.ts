/** Convection of a round pillar in the air that passes it. */
import type { ValidRange } from '../valid-range.ts';

export const pillarRange: ValidRange = {
  law: 'convection of the pillars',
  quantity: 'Reynolds number of a pillar',
  unit: '',
  low: 0.3,
  high: 1e7,
  source: 'Churchill & Bernstein, J. Heat Transfer 99 (1977) 300',
};

/**
 * Mean Nusselt number of a cylinder in cross flow.
 *
 *     Nu = 0.3 + 0.62 √Re Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4) · (1 + (Re/282 000)^(5/8))^(4/5)
 *
 * @remarks
 * Properties at film temperature, Re Pr above 0.2; within 20 %, lowest of the data between 7e4 and 4e5. For one cylinder;
 * in a bank with the speed between the cylinders, and then low for all but the first row, which stands in calmer air.
 * Source: Churchill & Bernstein, J. Heat Transfer 99 (1977) 300, as in Incropera & DeWitt, Fundamentals of Heat and
 * Mass Transfer, ch. 7.
 *
 * @param Re - Reynolds number on the diameter [-]
 * @param Pr - Prandtl number [-]
 * @returns mean Nusselt number on the diameter [-]
 *
 * @example
 * nusseltCylinder(6071, 0.7) // => 40.63709
 */
export function nusseltCylinder(Re: number, Pr: number): number {
  const laminar = (0.62 * Math.sqrt(Re) * Math.cbrt(Pr)) / Math.sqrt(Math.sqrt(1 + Math.cbrt(0.4 / Pr) ** 2));
  return 0.3 + laminar * (1 + (Re / 282000) ** 0.625) ** 0.8;
}
