/**
 * I − γΔtJ on the tree of `network.ts`, eliminated from the leaves to the face: the chain of the pads, then bell, rim and the
 * chain of the cheek. Nothing is filled in. Each chain's running value is carried in a local: read back from an array it
 * would wait for the write. Why all is made inside one function: see `rates.ts`.
 */
import { NODE, NODES } from './network.ts';
import type { Rates } from './rates.ts';

export interface Elimination {
  /** For h = γΔt, the entry `at` of an array: a number would be boxed. */
  factorise: (step: Float64Array, at: number) => void;
  /** k becomes (I − γΔtJ)⁻¹ k. */
  solve: (k: Float64Array) => void;
}

export function makeElimination({ dT, dP, G, slope }: Rates): Elimination {
  const nodes = NODES;
  const { rim, rimJoins, bell, fluid, caliper, padFace, face, wall } = NODE;
  const last = face - 1;
  const column = (): Float64Array => new Float64Array(nodes);
  /** What a node's row gives to its parent's, what it takes back from it, and the inverse of its pivot. */
  const [up, down, pivot] = [column(), column(), column()];

  function factorise(step: Float64Array, at: number): void {
    const h = step[at]!;
    for (let i = 0; i < nodes; i++) pivot[i] = 1;
    pivot[face]! += h * (slope[0]! + slope[5]! + slope[12]!);
    pivot[wall]! += h * (slope[1]! + slope[6]! + slope[13]!);
    pivot[rim]! += h * (slope[2]! + slope[7]!);
    pivot[bell]! += h * (slope[3]! + slope[8]! + slope[10]!);
    pivot[caliper]! += h * (slope[4]! + slope[9]! + slope[11]!);
    let carried = 0;
    for (let i = fluid; i <= padFace; i++) {
      const parent = i < padFace ? i + 1 : face;
      const own = h * G[i]! * dT[i]!;
      const parents = h * G[i]! * dT[parent]!;
      const inverse = 1 / (pivot[i]! + carried + own);
      pivot[i] = inverse;
      up[i] = own * inverse;
      down[i] = parents * inverse;
      carried = parents - own * down[i]!;
    }
    pivot[face]! += carried;
    leaf(bell, wall, h * G[bell]! * dT[bell]!, h * G[bell]! * dT[wall]!);
    leaf(rim, rimJoins, h * G[rim]! * dP[rim]!, h * G[rim]! * dP[rimJoins]!);
    carried = 0;
    for (let i = wall; i <= last; i++) {
      const own = h * G[i]! * dP[i]!;
      const parents = h * G[i]! * dP[i + 1]!;
      const inverse = 1 / (pivot[i]! + carried + own);
      pivot[i] = inverse;
      up[i] = own * inverse;
      down[i] = parents * inverse;
      carried = parents - own * down[i]!;
    }
    pivot[face] = 1 / (pivot[face]! + carried);
  }

  function leaf(i: number, parent: number, own: number, parents: number): void {
    const inverse = 1 / (pivot[i]! + own);
    pivot[i] = inverse;
    up[i] = own * inverse;
    down[i] = parents * inverse;
    pivot[parent]! += parents - own * down[i];
  }

  function solve(k: Float64Array): void {
    let pads = k[fluid]!;
    for (let i = fluid; i < padFace; i++) k[i + 1] = pads = k[i + 1]! + up[i]! * pads;
    k[rimJoins]! += up[rim]! * k[rim]!;
    let cheek = k[wall]! + up[bell]! * k[bell]!;
    k[wall] = cheek;
    for (let i = wall; i < last; i++) k[i + 1] = cheek = k[i + 1]! + up[i]! * cheek;
    const rubbed = pivot[face]! * (k[face]! + up[padFace]! * pads + up[last]! * cheek);
    k[face] = pads = cheek = rubbed;
    for (let i = padFace; i >= fluid; i--) k[i] = pads = pivot[i]! * k[i]! + down[i]! * pads;
    for (let i = last; i >= wall; i--) k[i] = cheek = pivot[i]! * k[i]! + down[i]! * cheek;
    k[rim] = pivot[rim]! * k[rim]! + down[rim]! * k[rimJoins]!;
    k[bell] = pivot[bell]! * k[bell]! + down[bell]! * cheek;
  }

  return { factorise, solve };
}
