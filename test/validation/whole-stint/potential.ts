/** Conduction potential ∫k dT of a material whose conductivity runs straight between the entries of its table: exact. */
import type { Material } from '../../../engine/disc/materials/material.ts';

/** Potential above the table's first entry [W/m]; its end values hold beyond it. */
export function potentialOf({
  temperature_K: T,
  conductivity: k,
}: Material): (temperature_K: number) => number {
  const atEntry = [0];
  for (let i = 1; i < T.length; i++)
    atEntry.push(atEntry[i - 1]! + ((k[i]! + k[i - 1]!) / 2) * (T[i]! - T[i - 1]!));
  const last = T.length - 1;
  return (temperature_K) => {
    if (temperature_K <= T[0]!) return k[0]! * (temperature_K - T[0]!);
    if (temperature_K >= T[last]!) return atEntry[last]! + k[last]! * (temperature_K - T[last]!);
    let i = 1;
    while (T[i]! < temperature_K) i++;
    const over = temperature_K - T[i - 1]!;
    const growth = (k[i]! - k[i - 1]!) / (T[i]! - T[i - 1]!);
    return atEntry[i - 1]! + over * (k[i - 1]! + (growth * over) / 2);
  };
}
