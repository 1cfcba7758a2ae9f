/** The car and its driver: all that decides the speed and the heat of the brakes. */
import * as v from 'valibot';
import { choice, flag, quantity, text } from './field.ts';

export const carSchema = v.looseObject({
  name: text('Car', 'What this car is called here'),
  mass_kg: quantity('Mass', [200, 4000, 5], 'Car with driver, without fuel'),
  fuel_kg: quantity('Fuel at the start', [0, 300, 1], 'Fuel on board as the stint begins'),
  fuel_burn_kg_per_100km: quantity('Fuel used', [0, 200, 1], 'Fuel burnt on a push lap'),
  rotational_factor: quantity(
    'Rotating mass',
    [1, 1.2],
    'Kinetic energy with wheels and driveline, over that of the mass alone',
  ),
  rolling_coefficient: quantity('Rolling resistance', [0.003, 0.05], 'Rolling resistance over weight'),
  weight_front: quantity('Weight on the front', [0.2, 0.8], 'Share of the static weight on the front axle'),
  cg_height_m: quantity('Centre of gravity', [0.1, 1], 'Height above the road'),
  wheelbase_m: quantity('Wheelbase', [1, 4.5], 'Distance between the axles'),
  power_kW: quantity('Power', [10, 1200, 1], 'Engine power at full throttle at sea level'),
  driveline_efficiency: quantity(
    'Driveline efficiency',
    [0.6, 1],
    'Share of the power that reaches the wheels',
  ),
  power_follows_density: flag('Power follows air density', 'True for an engine without charging'),
  drag_area_m2: quantity('Drag area', [0.1, 3], 'Drag coefficient times frontal area'),
  downforce_area_m2: quantity('Downforce area', [-0.5, 10], 'Downforce coefficient times frontal area'),
  grip_dry: quantity('Grip, dry', [0.3, 3], 'Tyre friction coefficient on a dry track'),
  grip_wet: quantity('Grip, wet', [0.2, 2], 'Tyre friction coefficient on a wet track'),
  loaded_radius_m: quantity('Loaded tyre radius', [0.15, 0.5], 'Wheel centre to road under load'),
  braking_slip: quantity(
    'Slip in braking',
    [0, 0.2],
    'Longitudinal slip; this share of the braking work heats the tyre',
  ),
  engine_braking_kW: quantity(
    'Engine braking',
    [0, 150, 1],
    'Power the engine takes at full revs with closed throttle',
  ),
  driven_axle: choice('Driven axle', ['front', 'rear', 'both'], 'Where power and engine braking act'),
  brake_balance_front: quantity(
    'Brake balance',
    [0.3, 0.95, 0.005],
    'Share of the braking force at the front axle',
  ),
});

export const driverSchema = v.looseObject({
  grip_share_braking_dry: quantity(
    'Grip used in braking, dry',
    [0.2, 1],
    'Share of the grip at hand used in braking',
  ),
  grip_share_braking_wet: quantity('Grip used in braking, wet', [0.2, 1], 'The same on a wet track'),
  grip_share_cornering: quantity(
    'Grip used in cornering',
    [0.2, 1],
    'Share of the sideways grip used in corners',
  ),
  grip_share_traction: quantity('Grip used in traction', [0.2, 1], 'Share of the grip used in accelerating'),
  coast_s: quantity('Coasting', [0, 2, 0.05], 'Time off the throttle before the brake'),
  build_up_s: quantity('Brake build-up', [0, 1.5, 0.05], 'Time from first touch to full braking'),
});
