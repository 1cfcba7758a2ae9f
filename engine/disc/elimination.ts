/**
 * I − γΔtJ on the tree of `network.ts`, eliminated from the leaves to the face: the chain of the pads, then bell, rim and the
 * chain of the cheek. Nothing is filled in. Each chain's running value is carried in a local: read back from an array it
 * would wait for the write. Why all is made inside one function: see `rates.ts`.
 */
import { NODE, NODES } from './network.ts';
import type { Rates } from './rates.ts';

export interface Elimination {
  /** γΔt [s]; an entry of an array, for a number handed over would be boxed. */
  h: Float64Array;
  /** One value a node: the right-hand side, and then the solution. */
  k: Float64Array;
  factorise: () => void;
  /** k becomes (I − γΔtJ)⁻¹ k. */
  solve: () => void;
}

export function makeElimination({ dT, dP, G, slope }: Rates): Elimination {
  const nodes = NODES;
  const { rim, rimJoins, bell, fluid, caliper, padFace, face, wall } = NODE;
  const last = face - 1;
  /** From a node of the pads' chain to the one of the cheek's that is eliminated beside it. */
  const beside = wall - fluid;
  const column = (): Float64Array => new Float64Array(nodes);
  const [h, k] = [new Float64Array(1), column()];
  /** What a node's row gives to its parent's, what it takes back from it, and the inverse of its pivot. */
  const [up, down, pivot] = [column(), column(), column()];

  function factorise(): void {
    const dt = h[0]!;
    for (let i = 0; i < nodes; i++) pivot[i] = 1;
    pivot[face]! += dt * (slope[0]! + slope[5]! + slope[12]!);
    pivot[wall]! += dt * (slope[1]! + slope[6]! + slope[13]!);
    pivot[rim]! += dt * (slope[2]! + slope[7]!);
    pivot[bell]! += dt * (slope[3]! + slope[8]! + slope[10]!);
    pivot[caliper]! += dt * (slope[4]! + slope[9]! + slope[11]!);
    pivot[wall]! += row(bell, dt * G[bell]! * dT[bell]!, dt * G[bell]! * dT[wall]!, 0);
    pivot[rimJoins]! += row(rim, dt * G[rim]! * dP[rim]!, dt * G[rim]! * dP[rimJoins]!, 0);
    let pads = 0;
    let cheek = 0;
    for (let i = fluid; i < padFace; i++) {
      pads = row(i, dt * G[i]! * dT[i]!, dt * G[i]! * dT[i + 1]!, pads);
      const j = i + beside;
      cheek = row(j, dt * G[j]! * dP[j]!, dt * G[j]! * dP[j + 1]!, cheek);
    }
    pads = row(padFace, dt * G[padFace]! * dT[padFace]!, dt * G[padFace]! * dT[face]!, pads);
    for (let j = padFace + beside; j <= last; j++)
      cheek = row(j, dt * G[j]! * dP[j]!, dt * G[j]! * dP[j + 1]!, cheek);
    pivot[face] = 1 / (pivot[face]! + pads + cheek);
  }

  /** Eliminates a node of a chain; gives what its parent's pivot gains, as the node was given `gained`. */
  function row(i: number, own: number, parents: number, gained: number): number {
    const rest = pivot[i]! + gained;
    const inverse = 1 / (pivot[i]! + own + gained);
    pivot[i] = inverse;
    up[i] = own * inverse;
    down[i] = parents * inverse;
    return parents * rest * inverse;
  }

  function solve(): void {
    k[rimJoins]! += up[rim]! * k[rim]!;
    let pads = k[fluid]!;
    let cheek = k[wall]! + up[bell]! * k[bell]!;
    k[wall] = cheek;
    for (let i = fluid; i < padFace; i++) {
      const j = i + beside;
      k[i + 1] = pads = k[i + 1]! + up[i]! * pads;
      k[j + 1] = cheek = k[j + 1]! + up[j]! * cheek;
    }
    k[last] = cheek = k[last]! + up[last - 1]! * cheek;
    const rubbed = pivot[face]! * (k[face]! + up[padFace]! * pads + up[last]! * cheek);
    k[face] = pads = cheek = rubbed;
    k[last] = cheek = pivot[last]! * k[last] + down[last]! * cheek;
    for (let i = padFace; i >= fluid; i--) {
      const j = i + beside;
      k[i] = pads = pivot[i]! * k[i]! + down[i]! * pads;
      k[j] = cheek = pivot[j]! * k[j]! + down[j]! * cheek;
    }
    k[rim] = pivot[rim]! * k[rim]! + down[rim]! * k[rimJoins]!;
    k[bell] = pivot[bell]! * k[bell]! + down[bell]! * cheek;
  }

  return { h, k, factorise, solve };
}
