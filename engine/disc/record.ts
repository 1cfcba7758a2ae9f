/** Writes the temperatures of a corner into its columns, as `evaluate` left them at the start of a step. */
import type { CornerColumns } from './columns.ts';
import { CHEEK, NODE } from './network.ts';
import type { Rates } from './rates.ts';
import type { Stepper } from './stepper.ts';

export type WriteSample = (s: Stepper, out: CornerColumns, sample: number) => void;

export function makeRecord({ T, wheelhouse_K }: Rates): WriteSample {
  const { rim, bell, fluid, caliper, padFace, face, wall } = NODE;
  const cheek = CHEEK;
  return ({ network }, out, sample) => {
    let mean = 0;
    for (let i = 0; i < cheek.length; i++) mean += network.cheekShare[i]! * T[cheek[i]!]!;
    out.face_K[sample] = T[face]!;
    out.cheek_K[sample] = mean;
    out.wall_K[sample] = T[wall]!;
    out.rim_K[sample] = T[rim]!;
    out.bell_K[sample] = T[bell]!;
    out.pad_K[sample] = T[padFace]!;
    out.caliper_K[sample] = T[caliper]!;
    out.fluid_K[sample] = T[fluid]!;
    out.wheelhouse_K[sample] = wheelhouse_K[0]!;
  };
}
