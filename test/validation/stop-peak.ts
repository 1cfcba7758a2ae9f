/** The heated face of a bare cheek in one stop whose power falls in a straight line to 0. */
import { drivenSlab, evenSteps, ROOM_K, slabAt, stillMap, type Slab } from '../support/bare-slab.ts';

export interface StopPeak {
  /** Highest rise, a parabola through three samples [K] */
  peak_K: number;
  /** When, as a share of the stop [-] */
  share: number;
  /** Rise at the end of the stop [K] */
  end_K: number;
}

const STEPS = 800;

export function stopPeak(slab: Slab, flux: number, stop_s: number): StopPeak {
  const first_W = flux * slab.area_m2;
  const lap = evenSteps(stop_s, STEPS, {
    at: (t) => first_W * (1 - t / stop_s),
    sum: (t) => first_W * (t - t ** 2 / (2 * stop_s)),
  });
  const { face_K } = drivenSlab(slabAt(slab, ROOM_K), lap, stillMap());
  const top = face_K.indexOf(Math.max(...face_K));
  const [before, at, after] = [face_K[top - 1]!, face_K[top]!, face_K[top + 1]!];
  const shift = (before - after) / (2 * (before - 2 * at + after));
  return {
    peak_K: at - ((before - after) * shift) / 4 - ROOM_K,
    share: (top + 1 + shift) / STEPS,
    end_K: face_K.at(-1)! - ROOM_K,
  };
}
