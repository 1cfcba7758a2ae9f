/** Where, in what weather, behind whom and in which phases the stint is driven. */
import * as v from 'valibot';
import { choice, count, flag, quantity, text } from './field.ts';

const segmentSchema = v.looseObject({
  length_m: quantity('Length', [1, 5000], 'Along the driven line'),
  radius_m: v.nullable(quantity('Radius', [5, 5000], 'Of the driven line; none for a straight')),
  turn: v.optional(choice('Turn', ['left', 'right'], 'Which way it goes')),
  slope_pct: v.optional(quantity('Slope', [-20, 20], 'Uphill is positive')),
  name: v.optional(text('Name', 'What the corner is called')),
});

export const circuitSchema = v.looseObject({
  name: text('Circuit', 'What this circuit is called here'),
  segments: v.pipe(
    v.array(segmentSchema, 'a list of segments'),
    v.minLength(3, 'at least 3 segments'),
    v.maxLength(400, 'at most 400 segments'),
  ),
});

const column = v.pipe(
  v.array(v.number('a number'), 'a list of numbers'),
  v.minLength(50, 'at least 50 samples'),
);

export const traceSchema = v.looseObject({
  name: text('Trace', 'Where the trace came from'),
  distance_m: column,
  time_s: column,
  speed_kmh: column,
  /** Where the log carries them, uphill positive; a slope counts before a height. */
  slope_pct: v.optional(column),
  height_m: v.optional(column),
  /** Longitudinal acceleration as logged, forward positive. */
  accel_g: v.optional(column),
  /** Pressure in the brake lines; one sensor fills the front. */
  brake_front_bar: v.optional(column),
  brake_rear_bar: v.optional(column),
});

export const conditionsSchema = v.looseObject({
  ambient_C: quantity('Ambient', [-30, 55, 1], 'Air temperature in the shade'),
  altitude_m: quantity('Altitude', [-400, 5000, 10], 'Above sea level'),
  humidity_pct: quantity('Humidity', [0, 100, 1], 'Relative humidity'),
  wet: flag('Wet', 'A wet track with spray'),
  spray_g_per_m3: quantity('Spray', [0, 20, 0.1], 'Water carried by the air at the brakes when wet'),
});

const gap_m = v.nullable(quantity('Gap to the car ahead', [1, 500, 1], 'Nose to tail; none in clear air'));
const gap_s = v.nullable(
  quantity('Gap to the car ahead', [0.05, 20, 0.05], 'In seconds at the same place; none in clear air'),
);

export const trafficSchema = v.looseObject({
  gap_m,
  gap_s,
  car_ahead_drag_area_m2: quantity('Drag area of the car ahead', [0.1, 5], 'Makes the wake'),
  offset_m: quantity('Offset', [0, 5, 0.1], 'Sideways between the middle of the wake and the mouth'),
  wake_strength: quantity(
    'Wake strength',
    [0, 2, 0.05],
    'Lost total pressure over that of the usual wake; 0: none. The tow stays',
  ),
});

/** Changes that hold from this phase on: any key of conditions, blanking or driver, brake balance, fuel on board. */
const set = v.optional(
  v.record(v.string(), v.union([v.number(), v.boolean(), v.null()], 'a number, true, false or null')),
);

const lapPhase = <const K extends 'out' | 'push' | 'safety' | 'in'>(kind: K) =>
  v.looseObject({
    kind: v.literal(kind),
    laps: v.nullable(count('Laps', [1, 200], 'Laps of this phase; none takes what the stint leaves')),
    gap_m: v.optional(gap_m),
    gap_s: v.optional(gap_s),
    traffic_share: v.optional(
      quantity('Share of the lap in traffic', [0, 1, 0.05], 'The rest is driven in clear air'),
    ),
    pull_out_kmh: v.optional(
      v.nullable(
        quantity(
          'Pulls out of line above',
          [50, 400, 5],
          'Faster than this the car runs beside the wake: clear air at the mouth, no tow; none stays in line',
        ),
      ),
    ),
    tow: v.optional(
      flag('Tow', 'The car ahead spares this one drag, so it arrives faster; true if left out'),
    ),
    set,
  });

const standPhase = v.looseObject({
  kind: v.literal('stand'),
  duration_s: quantity('Standing', [1, 7200, 5], 'How long the car stands'),
  brake_held: flag('Brake held', 'Pads pressed on the disc while standing'),
  set,
});

export const stintSchema = v.looseObject({
  laps: count('Laps', [1, 300], 'All driven laps, out-lap and in-lap included'),
  hold_trace: flag(
    'Hold the trace',
    'Keep speed and heat of the unchanged scenario while air and blanking change',
  ),
  out_lap_pace: quantity('Pace of the out-lap', [0.3, 1], 'Share of the push-lap grip that is used'),
  in_lap_pace: quantity('Pace of the in-lap', [0.2, 1], 'Share of the push-lap grip that is used'),
  safety_car_kmh: quantity('Safety-car speed', [40, 250, 5], 'Highest speed behind the safety car'),
  pit_kmh: quantity('Pit lane speed', [20, 120, 5], 'Where the out-lap starts and the in-lap ends'),
  phases: v.pipe(
    v.array(
      v.variant(
        'kind',
        [lapPhase('out'), lapPhase('push'), lapPhase('safety'), lapPhase('in'), standPhase],
        'out, push, safety, in or stand',
      ),
      'a list of phases',
    ),
    v.minLength(1, 'at least one phase'),
    v.maxLength(60, 'at most 60 phases'),
  ),
});
