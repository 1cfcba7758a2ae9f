/** How well the books of a corner close. */
import type { Ledger } from '../../engine/stint/result.ts';

/** What the books do not explain, over all the heat that went through them [-]. */
export function unexplained(ledger: Ledger): number {
  const { brakeHeat, stored, vaneAir, faceAir, otherAir, radiation, conducted } = ledger;
  const losses = [vaneAir, faceAir, otherAir, radiation, conducted];
  const lost = losses.reduce((sum, loss) => sum + loss, 0);
  const through = brakeHeat + Math.abs(stored) + losses.reduce((sum, loss) => sum + Math.abs(loss), 0);
  return Math.abs(brakeHeat - stored - lost) / Math.max(through, Number.MIN_VALUE);
}
