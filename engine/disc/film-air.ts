/** The air in the film between a wall and the air that passes it: its properties, at the mean of both temperatures. */
import { conductivityAir, heatCapacityAir, viscosityAir } from '../air/dry-air.ts';

export interface FilmAir {
  film_K: number;
  /** Conductivity [W/(m K)] */
  k: number;
  /** Dynamic viscosity [Pa s] */
  dynamic: number;
  /** [J/(kg K)] */
  heatCapacity: number;
  Pr: number;
}

/** They do not depend on speed: over a grid of speeds they are made once a wall. */
export function filmAir(wall_K: number, air_K: number): FilmAir {
  const film_K = (wall_K + air_K) / 2;
  const [k, dynamic, heatCapacity] = [conductivityAir(film_K), viscosityAir(film_K), heatCapacityAir(film_K)];
  return { film_K, k, dynamic, heatCapacity, Pr: (dynamic * heatCapacity) / k };
}
