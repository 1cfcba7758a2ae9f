/** The corners of a car in SI: how each brake is built and how its air is led. Equal sides are one corner. */
import type { CornerSpec } from '../disc/corner-spec.ts';
import { materials } from '../disc/materials.ts';
import { CURVED_STRETCH, vanePassage } from '../disc/vane-passage.ts';
import type { AirPathGeometry, HosePinch } from '../duct/air-path.ts';
import { depthOfHoles } from '../duct/blank-keys.ts';
import { areaLeak, LOSS_SHARP_GAP } from '../duct/leak.ts';
import { areaMouth } from '../duct/mouth-area.ts';
import { layOver } from '../scenario/tree.ts';
import type { Brake, Scenario } from '../scenario/schema.ts';
import { radians } from '../units.ts';
import type { Axle } from './result.ts';

type Duct = NonNullable<Brake['duct']>;

export interface Corner {
  axle: Axle;
  side: 'both' | 'left' | 'right';
  brake: Brake;
}

/** The corners to compute: one an axle where left and right are equal in everything through all phases, else two. */
export function cornersOf(scenario: Scenario, phases: Scenario[] = [scenario]): Corner[] {
  return (['front', 'rear'] as const).flatMap((axle): Corner[] => {
    const [left, right] = (['left', 'right'] as const).map((side) => brakeAt(scenario, axle, side));
    const equal = left === right || JSON.stringify(left) === JSON.stringify(right);
    const isTapedAlike = phases.every((at) => blankingAt(at, axle, 'left') === blankingAt(at, axle, 'right'));
    if (equal && isTapedAlike) return [{ axle, side: 'both', brake: left! }];
    return [
      { axle, side: 'left', brake: left! },
      { axle, side: 'right', brake: right! },
    ];
  });
}

function brakeAt({ brakes, sides }: Scenario, axle: Axle, side: 'left' | 'right'): Brake {
  const own = sides[`${axle}_${side}`];
  return own ? (layOver(brakes[axle], own) as Brake) : brakes[axle];
}

/** The keys that hold a corner's blanking: the axle's, and a side's own where it has one. */
export function blankingKeys(
  { blanking_pct }: Scenario,
  { axle, side }: Pick<Corner, 'axle' | 'side'>,
): string[] {
  const sides = side === 'both' ? (['left', 'right'] as const) : [side];
  const own = sides.filter((each) => blanking_pct[`${axle}_${each}`] !== undefined);
  const keys = own.map((each) => `blanking_pct.${axle}_${each}`);
  return own.length < sides.length ? [`blanking_pct.${axle}`, ...keys] : keys;
}

/** Share of the mouth that is covered at a corner [%]. */
export function blankingAt({ blanking_pct }: Scenario, axle: Axle, side: Corner['side']): number {
  return blanking_pct[`${axle}_${side === 'both' ? 'left' : side}`] ?? blanking_pct[axle];
}

/** The brake as the disc model takes it. */
export function specOf(
  { disc, bell, pad, caliper, fluid, wheel, duct }: Brake,
  loadedRadius_m: number,
): CornerSpec {
  const mm = 1e-3;
  const cm2 = 1e-4;
  return {
    disc: {
      vented: disc.kind === 'vented',
      material: disc.material,
      outer_m: disc.outer_mm * mm,
      inner_m: disc.inner_mm * mm,
      cheek_m: disc.cheek_mm * mm,
      gap_m: disc.gap_mm * mm,
      vanes: disc.vanes,
      vane_m: disc.vane_mm * mm,
      vaneShape: disc.vane_shape,
      vaneStretch: disc.vane_shape === 'curved' ? CURVED_STRETCH : 1,
      vaneEnhancement: disc.vane_enhancement,
      ringMass_kg: disc.ring_mass_kg,
      swept_m2: disc.swept_cm2 * cm2,
      emissivityTrack: disc.emissivity_track,
      emissivityOther: disc.emissivity_other,
    },
    bell: {
      material: bell.material,
      mass_kg: bell.mass_kg,
      joint_WpK: bell.joint_W_per_K,
      area_m2: bell.area_cm2 * cm2,
      hub_WpK: bell.hub_W_per_K,
      emissivity: bell.emissivity,
    },
    pad: {
      area_m2: pad.area_cm2 * cm2,
      thickness_m: pad.thickness_mm * mm,
      plate_m: pad.plate_mm * mm,
      material: pad.material,
      conductivity: pad.conductivity_W_per_mK,
      shim_m: pad.shim_mm * mm,
      discShare: pad.disc_share,
      drag_N: pad.drag_N,
      runningGap_m: pad.running_gap_mm * mm,
    },
    caliper: {
      mass_kg: caliper.mass_kg,
      area_m2: caliper.area_cm2 * cm2,
      piston_WpK: caliper.piston_W_per_K,
      mount_WpK: caliper.mount_W_per_K,
      emissivity: caliper.emissivity,
      ductWash: caliper.duct_wash,
    },
    fluid: { volume_m3: fluid.volume_ml * 1e-6, coupling_WpK: fluid.coupling_W_per_K },
    wheel: {
      crossflow: wheel.crossflow,
      ductOnFace: wheel.duct_on_face,
      still: wheel.still_W_per_m2K,
      covered: wheel.covered,
      openShare: wheel.open_pct / 100,
      loadedRadius_m,
    },
    leakArea_m2: duct
      ? duct.leak_cm2 * cm2 + areaLeak(Math.PI * disc.inner_mm * mm, duct.leak_gap_mm * mm)
      : OPEN_BACK_CM2 * cm2,
  };
}

/** Free area behind a disc without duct and backing plate, from which its vanes draw. From memory [cm²] */
const OPEN_BACK_CM2 = 100;

const NO_DUCT = {
  mouthArea_m2: 0,
  recovery: 1,
  hoses: 1,
  hoseDiameter_m: 0.05,
  hoseLength_m: 1,
  friction: 0.05,
};

/** Where the hose is flatter than it is round. */
function pinchOf({ clearance_mm, clearance_length_m, hose_mm }: Duct): HosePinch | null {
  if (clearance_mm === null || clearance_mm >= hose_mm) return null;
  return { flattened: clearance_mm / hose_mm, length_m: clearance_length_m };
}

/** The brake's way of the air, from the mouth to the wheel. */
export function airPathOf(brake: Brake, spec: CornerSpec): AirPathGeometry {
  const { duct, disc, wheel } = brake;
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const { outer_m, inner_m } = spec.disc;
  const shape = {
    outerRadius_m: outer_m / 2,
    innerRadius_m: inner_m / 2,
    pumping: disc.pumping,
    loss: disc.vane_loss,
  };
  const around = {
    leakArea_m2: spec.leakArea_m2,
    leakLoss: LOSS_SHARP_GAP,
    exitCp: wheel.exit_cp,
    wheelhouseCp: wheel.exit_cp,
    vanes: passage && { ...shape, flowArea_m2: passage.entryArea_m2 },
  };
  if (!duct) return { ...NO_DUCT, compression: 0, pinch: null, bends: [], ...around };
  return {
    mouthArea_m2: areaMouth(duct) * 1e-6,
    // any other blank has an edge that is sharp beside what it leaves open
    ...(duct.blank === 'perforated' ? { blankDepth: depthOfHoles(duct) } : {}),
    recovery: duct.recovery,
    hoses: duct.hoses,
    hoseDiameter_m: duct.hose_mm * 1e-3,
    hoseLength_m: duct.hose_length_m,
    friction: duct.hose_friction,
    compression: duct.hose_compression_pct / 100,
    pinch: pinchOf(duct),
    bends: duct.bends.map((bend) => ({ angle_rad: radians(bend.angle_deg), radiusRatio: bend.radius_ratio })),
    ...around,
  };
}
