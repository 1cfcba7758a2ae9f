import { drivenSlab, evenSteps, IRON, ROOM_K, slabAt, stillMap } from '../../support/bare-slab.ts';
import type { Compute } from '../gate.ts';

const slab = { thickness_m: 0.008, area_m2: 0.1 };
const heat_JpK = IRON.density * slab.thickness_m * slab.area_m2 * IRON.c;
/** So long that the cheek has one temperature, so little a rise that iron keeps its properties. */
const INTERVAL_S = 8000;
const STEPS = 1000;
const RISE_K = 0.2;

/** Each stop gives its heat within the first of the interval's steps. */
export const compute: Compute = (rows) =>
  rows.map(({ x = NaN, stops = NaN }) => {
    const side_WpK = (x * heat_JpK) / INTERVAL_S / 2;
    const step_s = INTERVAL_S / STEPS;
    const given = (t: number): number => {
      const whole = Math.floor(t / INTERVAL_S + 1e-9);
      return whole + Math.min(1, (t - whole * INTERVAL_S) / step_s);
    };
    const power = { at: () => 0, sum: (t: number) => given(t) * RISE_K * heat_JpK };
    const lap = evenSteps(stops * INTERVAL_S, stops * STEPS, power);
    const { cheek_K } = drivenSlab(slabAt(slab, ROOM_K), lap, stillMap(side_WpK, side_WpK));
    const rise = (at: number): number => (cheek_K[at]! - ROOM_K) / RISE_K;
    return { peak: rise((stops - 1) * STEPS), trough: rise(stops * STEPS - 1) };
  });
