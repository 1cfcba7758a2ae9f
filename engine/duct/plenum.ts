/** The node behind the disc, where the duct's air meets the vanes and the leak. */

import type { AirFlows } from './air-path.ts';
import { rootFalling } from './bracketed-root.ts';
import { signedRoot } from './flow-law.ts';

/** A way between the plenum and a place of known pressure. */
export interface Branch {
  /** Gauge pressure at its far end, less what a fan on the way adds towards it. */
  readonly far_Pa: number;
  /** Area over the square root of its loss coefficient; 0 where it is shut. */
  readonly lossFree_m2: number;
}

export interface PlenumNode {
  readonly duct: Branch;
  readonly vanes: Branch;
  readonly leak: Branch;
  readonly density_kgpm3: number;
  /** Density of the air that comes in through the leak. */
  readonly wheelhouseDensity_kgpm3: number;
}

/** Rounding of the flow laws at zero and width at which the search stops, as shares of the pressures' spread [-] */
const ROUNDING = 1e-8;
const TOLERANCE = 1e-13;

/**
 * Flows of the three branches of a plenum, and the pressure at which as much air arrives as leaves.
 *
 *     G_duct √(2ρ (p_duct − p)) = G_vanes √(2ρ (p − p_vanes)) + G_leak √(2ρ (p − p_leak))      roots signed
 *
 * @remarks
 * The surplus falls steadily with p, so there is one root, between the lowest and the highest far end. Where nothing
 * drives a flow all flows are 0. Vane air counts with ambient density, whatever its mixture. Incompressible.
 * Source: conservation of mass; definition of the loss coefficient.
 *
 * @param node - three branches, density of ambient and of wheelhouse air [kg/m³]
 * @returns flows [kg/s] and gauge pressure in the plenum [Pa]
 *
 * @example
 * solvePlenum({ density_kgpm3: 1.2, wheelhouseDensity_kgpm3: 1.2, duct: { far_Pa: 900, lossFree_m2: 0.002 },
 *   vanes: { far_Pa: -300, lossFree_m2: 0.002 }, leak: { far_Pa: -300, lossFree_m2: 0 } }).plenum_Pa // => 300.000
 */
export function solvePlenum(node: PlenumNode): AirFlows {
  const low = Math.min(node.duct.far_Pa, node.vanes.far_Pa, node.leak.far_Pa);
  const high = Math.max(node.duct.far_Pa, node.vanes.far_Pa, node.leak.far_Pa);
  const rounding_Pa = ROUNDING * (high - low);
  const outward = Math.sqrt(2 * node.density_kgpm3);
  const inward = Math.sqrt(2 * node.wheelhouseDensity_kgpm3);

  const duct = (p: number): number =>
    outward * node.duct.lossFree_m2 * signedRoot(node.duct.far_Pa - p, rounding_Pa);
  const vanes = (p: number): number =>
    outward * node.vanes.lossFree_m2 * signedRoot(p - node.vanes.far_Pa, rounding_Pa);
  const leak = (p: number): number =>
    (p > node.leak.far_Pa ? outward : inward) *
    node.leak.lossFree_m2 *
    signedRoot(p - node.leak.far_Pa, rounding_Pa);

  const bracket = { low, high, tolerance: TOLERANCE * (high - low) };
  const plenum_Pa = rootFalling((p) => duct(p) - vanes(p) - leak(p), bracket);
  const duct_kgps = duct(plenum_Pa);
  const vane_kgps = vanes(plenum_Pa);
  return { duct_kgps, vane_kgps, leak_kgps: duct_kgps - vane_kgps, plenum_Pa };
}
