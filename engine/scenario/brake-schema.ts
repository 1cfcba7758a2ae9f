/** One corner's brake: disc, bell, pads, caliper, fluid, wheel, duct and the supplier's window. Left and right of an axle share it. */
import * as v from 'valibot';
import { choice, count, quantity, text } from './field.ts';
import { mouthEntries } from './mouth-schema.ts';

const discSchema = v.looseObject({
  kind: choice('Disc', ['vented', 'solid'], 'Two cheeks with vanes between, or one plate'),
  material: choice(
    'Disc material',
    ['grey iron', 'carbon-ceramic'],
    'Sets density, heat capacity and conductivity against temperature',
  ),
  outer_mm: quantity('Outer diameter', [150, 480, 1], 'Outer diameter of the ring'),
  inner_mm: quantity('Inner diameter', [60, 400, 1], 'Inner diameter of the ring'),
  thickness_mm: quantity('Thickness', [6, 60, 0.5], 'Face to face'),
  cheek_mm: quantity(
    'Cheek',
    [3, 40, 0.1],
    'Thickness of one friction ring; half the thickness of a solid disc',
  ),
  gap_mm: quantity('Vane gap', [0, 40, 0.1], 'Between the cheeks; 0 for a solid disc'),
  vanes: count('Vanes', [0, 400], 'Number of vanes or pillars; 0 for a solid disc'),
  vane_mm: quantity('Vane thickness', [0, 20, 0.1], 'Thickness of one vane, or diameter of one pillar'),
  vane_shape: choice(
    'Vane shape',
    ['straight', 'curved', 'pillars', 'none'],
    'Curved vanes are longer than the radius they span; pillars are round',
  ),
  vane_enhancement: quantity(
    'Vane heat transfer',
    [0.8, 4],
    'Over a smooth tube with entry effect, at Re 10 000: roughness and the turn at the entry; rotation comes on top',
  ),
  vane_loss: quantity(
    'Vane pressure loss',
    [0.5, 8],
    'Loss of the passage in dynamic pressures, turn at the entry and exit included',
  ),
  pumping: quantity('Vane pumping', [0, 1], 'Share of the solid-body pressure rise that the vanes give'),
  ring_mass_kg: quantity('Ring mass', [0.5, 30, 0.1], 'Cheeks and vanes, without the bell'),
  swept_cm2: quantity(
    'Swept area',
    [50, 4000, 1],
    'Rubbed by the pads, both faces together: where the heat comes in',
  ),
  emissivity_track: quantity('Emissivity, rubbed faces', [0.05, 1], 'Total emissivity of the rubbed track'),
  emissivity_other: quantity('Emissivity, rim', [0.05, 1], 'Total emissivity of the oxidised or painted rim'),
});

const bellSchema = v.looseObject({
  material: choice('Bell material', ['aluminium', 'grey iron'], 'Iron where disc and bell are one casting'),
  mass_kg: quantity('Bell mass', [0.1, 10, 0.1], 'Bell, hat or mounting'),
  joint_W_per_K: quantity('Disc to bell', [0, 60], 'Conductance from the ring into the bell'),
  area_cm2: quantity('Bell surface', [50, 3000, 10], 'Surface that meets the air'),
  hub_W_per_K: quantity('Bell to hub', [0, 30], 'Conductance into hub and upright, taken at ambient'),
  emissivity: quantity('Emissivity, bell', [0.05, 1], 'Total emissivity of the bell; bare aluminium is low'),
});

const frictionPoint = v.looseObject({
  face_C: quantity('Face', [-30, 1200, 5], 'Temperature of the rubbed face'),
  coefficient: quantity('Friction', [0.05, 1, 0.01], 'Friction coefficient at that temperature'),
});
const frictionSchema = v.pipe(
  v.array(frictionPoint, 'a list of temperatures and friction coefficients'),
  v.minLength(2, 'at least 2 points'),
  v.maxLength(20, 'at most 20 points'),
);

const padSchema = v.looseObject({
  area_cm2: quantity('Pad area', [5, 300, 1], 'One pad'),
  thickness_mm: quantity('Pad thickness', [2, 40, 0.5], 'Friction material left'),
  plate_mm: quantity('Backing plate', [1, 12, 0.5], 'Steel plate behind the friction material'),
  material: choice(
    'Friction material',
    ['organic', 'semi-metallic', 'sintered'],
    'Sets density and heat capacity against temperature',
  ),
  conductivity_W_per_mK: quantity('Pad conductivity', [0.3, 20], 'Friction material'),
  shim_mm: quantity('Shim', [0, 5, 0.1], 'Thickness of a titanium shim behind each plate; 0: none'),
  friction: frictionSchema,
  disc_share: v.nullable(
    quantity(
      'Heat to the disc',
      [0.7, 1],
      'Share of the friction heat that is made on the disc; none: by effusivity and area',
    ),
  ),
  drag_N: quantity(
    'Residual drag',
    [0, 60, 1],
    'Friction force of both pads with the brake off, at the effective radius',
  ),
  running_gap_mm: quantity('Running gap', [0.02, 1], 'Mean air gap between pad and disc with the brake off'),
  limit_C: quantity('Pad limit', [150, 1200, 5], 'Highest temperature the pad supplier allows'),
});

const caliperSchema = v.looseObject({
  mass_kg: quantity('Caliper mass', [0.5, 12, 0.1], 'Aluminium body with pistons'),
  area_cm2: quantity('Caliper surface', [100, 3000, 10], 'Surface that meets the air'),
  piston_W_per_K: quantity('Plate to caliper', [0, 20], 'Conductance from both plates through the pistons'),
  mount_W_per_K: quantity('Caliper to upright', [0, 20], 'Conductance into the upright, taken at ambient'),
  caution_C: quantity('Caliper caution', [80, 350, 5], 'Above this, look at seals and pistons'),
  emissivity: quantity('Emissivity, caliper', [0.05, 1], 'Total emissivity of the painted or anodised body'),
  duct_wash: quantity(
    'Duct air on the caliper',
    [0, 1],
    'Share of the caliper that the air behind the disc washes',
  ),
});

const fluidSchema = v.looseObject({
  class: choice('Fluid class', ['DOT 3', 'DOT 4', 'DOT 5', 'DOT 5.1', 'other'], 'From its label'),
  volume_ml: quantity('Fluid in the caliper', [5, 200, 1], 'Fluid that shares the caliper temperature'),
  coupling_W_per_K: quantity(
    'Caliper to fluid',
    [0.05, 20],
    'Conductance from the caliper body and pistons into the fluid',
  ),
  dry_boiling_C: quantity('Dry boiling point', [150, 400, 5], 'Fresh fluid, from its label'),
  wet_boiling_C: quantity('Wet boiling point', [100, 350, 5], 'Fluid with 3.7 % water, from its label'),
});

const wheelSchema = v.looseObject({
  crossflow: quantity(
    'Air past the disc',
    [0.05, 1],
    'Speed of the air over the faces as a share of car speed, for a wheel open by 35 %',
  ),
  duct_on_face: quantity(
    'Duct air on the inner face',
    [0, 1],
    'How much of the inner face the fed air washes',
  ),
  still_W_per_m2K: quantity('Still-air convection', [1, 15], 'Convection of a disc at rest'),
  covered: quantity('Face covered', [0, 0.5], 'Share of the faces under pads and caliper'),
  open_pct: quantity(
    'Wheel opening',
    [5, 90, 1],
    'Open share of the wheel: how much air passes it, and how much of the outer face sees out',
  ),
  exit_cp: quantity('Wheel exit pressure', [-1, 0.3], 'Pressure coefficient where the air leaves the wheel'),
});

const bendSchema = v.looseObject({
  angle_deg: quantity('Bend', [1, 180, 1], 'Turning angle'),
  radius_ratio: quantity('Bend radius', [0.5, 10], 'Centre-line radius over hose diameter'),
});

export const ductSchema = v.looseObject({
  mouth_width_mm: quantity('Mouth width', [10, 400, 1], 'Outboard to inboard; a round mouth’s diameter'),
  mouth_height_mm: quantity(
    'Mouth height',
    [10, 400, 0.5],
    'Height of the mouth; a round one is as high as it is wide',
  ),
  recovery: quantity(
    'Inlet recovery',
    [0.1, 1, 0.01],
    'Total pressure at the mouth over the free stream dynamic pressure',
  ),
  hoses: count('Hoses', [1, 4], 'Hoses side by side'),
  hose_mm: quantity('Hose', [20, 200, 0.5], 'Inner diameter'),
  hose_length_m: quantity('Hose length', [0.05, 5, 0.05], 'Along its centre line'),
  hose_friction: quantity('Hose friction', [0.01, 0.4], 'Darcy friction factor of the stretched hose'),
  hose_compression_pct: quantity('Hose compression', [0, 45, 1], 'Shortening against fully stretched'),
  clearance_mm: v.nullable(
    quantity('Clearance', [5, 200, 1], 'Height of the narrowest gap the hose passes; none: round'),
  ),
  clearance_length_m: quantity(
    'Length of the narrow gap',
    [0.02, 5, 0.05],
    'Over which the hose is flattened',
  ),
  bends: v.pipe(v.array(bendSchema, 'a list of bends'), v.maxLength(12, 'at most 12 bends')),
  leak_cm2: quantity('Leak', [0, 120, 1], 'Open area around backing plate, hub and upright'),
  leak_gap_mm: quantity(
    'Leak gap',
    [0, 15, 0.1],
    'Gap between backing plate and disc, all round at the inner edge; comes on top of the leak',
  ),
  strip_mm: quantity(
    'Strip of tape',
    [5, 150, 1],
    'Width of one strip, laid from the side of the mouth where its blank begins',
  ),
  panels_pct: v.pipe(
    v.array(quantity('Panel', [0, 100, 1], 'Share of the mouth that this panel covers'), 'a list of panels'),
    v.maxLength(8, 'at most 8 panels'),
  ),
  ...mouthEntries,
});

const windowSchema = v.looseObject({
  bite_C: quantity('Bite', [0, 1000, 5], 'Lowest face temperature at the start of a hard stop'),
  face_peak_C: quantity('Face peak', [100, 1400, 5], 'Highest face temperature'),
  bulk_C: quantity('Bulk', [100, 1400, 5], 'Highest mean temperature of the cheek'),
  run_C: v.nullable(quantity('Run', [0, 1000, 5], 'Lowest lap mean of the bulk, or none')),
  from_lap: count('Counts from push lap', [1, 50], 'The push lap from which laps are judged'),
  hard_stop_from_kmh: quantity('Hard stop from', [20, 300, 5], 'A hard stop begins above this speed'),
  hard_stop_energy: quantity(
    'Hard stop energy',
    [0.05, 1],
    'A hard stop takes at least this share of the kinetic energy of top speed',
  ),
  source: text('Source of the window', 'Who gave these limits; "example" if nobody'),
  date: text('Date of the window', 'When they were given'),
});

export const brakeSchema = v.looseObject({
  disc: discSchema,
  bell: bellSchema,
  pad: padSchema,
  caliper: caliperSchema,
  fluid: fluidSchema,
  wheel: wheelSchema,
  duct: v.nullable(ductSchema),
  window: windowSchema,
});
