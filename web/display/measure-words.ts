/** What is worth measuring, in words: what each unknown moves, why it is unsure, and how it could be measured. */
import type { Axle, CornerResult, CornerSensitivity, Effect } from '../../engine/index.ts';
import { nameOf } from '../../engine/scenario/key-name.ts';
import { unitOf } from '../../engine/scenario/field.ts';
import type { FoundSpread } from './doubt-words.ts';
import { capital, digitsOf, isNothing, kelvins, withUnit } from './format.ts';

export interface ToMeasure {
  key: string;
  /** "vane heat transfer" */
  name: string;
  /** "±54 K" of the margin that fails first */
  moves: string;
  /** "At 1.2 the face peak is 44 K hotter, at 2.2 35 K cooler." */
  ends: string;
  /** "Taken as 1.6, unsure: casting roughness." */
  why: string;
  /** How; empty where nobody knows. */
  how: string;
}

const MOST_TOLD = 3;
/** As in the search: what moves less is not worth measuring [K] */
const LEAST_TOLD_K = 1;

/** The three that move the margin which fails first the most. */
export function toMeasure(
  found: readonly CornerSensitivity[],
  at: { axle: Axle; side: CornerResult['side'] },
): ToMeasure[] {
  const corner = found.find(({ axle, side }) => axle === at.axle && side === at.side);
  if (!corner) return [];
  return corner.effects
    .filter(({ moves_K }) => moves_K >= LEAST_TOLD_K)
    .slice(0, MOST_TOLD)
    .map((effect) => wordsOf(effect, corner.failsFirst));
}

function wordsOf(effect: Effect, failsFirst: 'hot' | 'cold'): ToMeasure {
  const { key, likely, reason, moves_K } = effect;
  const amount = amountAt(key);
  return {
    key,
    name: nameOf(key),
    moves: `±${kelvins(moves_K)}`,
    ends: endsWords(effect, failsFirst, amount),
    why: `Taken as ${amount(likely)}; unsure: ${reason}.`,
    how: howTo(key),
  };
}

const amountAt =
  (key: string) =>
  (value: number): string =>
    withUnit(value, unitOf(key), digitsOf(value, 3));

/** What both ends of its range do to the number that fails first. */
function endsWords(
  { low, high, atLow, atHigh }: Effect,
  failsFirst: 'hot' | 'cold',
  amount: (value: number) => string,
): string {
  const [what, up, down] =
    failsFirst === 'hot' ? ['face peak', 'hotter', 'cooler'] : ['coldest stop', 'warmer', 'colder'];
  const of = (shift: Effect['atLow']): number | null =>
    failsFirst === 'hot' ? shift.facePeak_K : shift.coldestStop_K;
  const [cool, warm] = [of(atLow), of(atHigh)];
  if (cool === null || warm === null) return '';
  const move = (by_K: number): string =>
    isNothing(by_K) ? 'as it is' : `${kelvins(by_K)} ${by_K > 0 ? up : down}`;
  return `At ${amount(low)} the ${what} is ${move(cool)}, at ${amount(high)} it is ${move(warm)}.`;
}

/** The same for both axles: looked up by what stands after them. */
const howTo = (key: string): string => capital(how()[key.replace(/^brakes\.(front|rear)\./, '')] ?? '');

/** Common practice, no source. */
const how = (): Readonly<Record<string, string>> => ({
  'disc.vane_enhancement':
    'log the disc on a long straight with the duct open, then taped shut: the two rates of cooling differ by what the vanes carry off.',
  'disc.vane_loss':
    'hold the disc on a bench, blow through it with a fan, and read pressure and flow together.',
  'disc.pumping': 'spin the disc on a bench and read the air speed at its eye.',
  'disc.emissivity_track':
    'read the face with the sensor and with a rubbing thermocouple at the same moment, car standing, disc hot.',
  'disc.emissivity_other':
    'read the disc with the sensor and with a thermocouple under high-temperature paint at the same moment.',
  'bell.joint_W_per_K': 'put temperature strips on bell and disc neck and read both after the same run.',
  'bell.hub_W_per_K': 'put temperature strips on bell and hub flange and read both after the same run.',
  'bell.emissivity': 'look: bare metal shines, paint and hard anodising do not.',
  'pad.conductivity_W_per_mK': 'ask the maker of the pad for the value of this compound when hot.',
  'pad.disc_share': 'fit a thermocouple to a backing plate and log it beside the disc over the same stops.',
  'pad.drag_N': 'lift the wheel, press and let go the pedal, and pull it round with a spring balance.',
  'pad.running_gap_mm':
    'slide a feeler gauge between pad and disc after the pedal has been pressed and let go.',
  'caliper.piston_W_per_K': 'put temperature strips on backing plate and caliper body.',
  'caliper.mount_W_per_K': 'put temperature strips on caliper and upright beside the bolts.',
  'caliper.emissivity': 'look: bare metal shines, paint and anodising do not.',
  'caliper.duct_wash': 'tie wool tufts to the caliper and watch them with air blown into the duct.',
  'fluid.coupling_W_per_K': 'fit a temperature strip beside the bleed screw and compare with the body.',
  'wheel.crossflow': 'fit a small pitot tube behind the spokes and log it beside the car’s speed.',
  'wheel.duct_on_face': 'blow smoke into the duct and see where it leaves behind the plate.',
  'wheel.still_W_per_m2K': 'log how the disc cools in the garage, car standing, no fan.',
  'wheel.covered': 'lay pads and caliper on card, draw round them and measure the area.',
  'wheel.open_pct': 'photograph the wheel straight on and measure what is open, less what stands behind it.',
  'wheel.exit_cp': 'tap the pressure in the wheel arch and log it against that of still air.',
  'duct.recovery': 'put a pitot tube in the mouth and log it against still air at a steady speed.',
  'duct.hose_friction': 'blow a known flow through the hose as fitted and read the pressure at both ends.',
  'duct.hose_compression_pct': 'measure the hose as fitted, then pulled straight: the difference is slack.',
  'duct.leak_cm2': 'measure the gap round the plate with a feeler gauge and multiply by its length.',
  'car.brake_balance_front': 'log both line pressures in the same stops and reckon with pistons and pads.',
  'car.engine_braking_kW': 'let the car roll from speed in gear and out of gear, and compare the logs.',
  'car.rolling_coefficient': `let the car roll out below ${withUnit(60, 'km/h')} on level ground and log the speed.`,
  'car.drag_area_m2': 'let the car roll out of gear from top speed and log the speed.',
  'car.braking_slip': 'log wheel speeds against the speed of a satellite logger in hard stops.',
  'car.rotational_factor': 'weigh wheels and discs and reckon their inertia from their radius.',
  'traffic.wake_strength': 'log the pressure in the mouth behind another car and alone, at the same speed.',
});

const isCounted = (found: FoundSpread): boolean =>
  found !== null && (typeof found === 'string' || found.unknowns > 0);

/**
 * For the corner in view: "Measure first: inlet recovery (±29 K)." Between the count and this, that it is being found.
 * Empty before, and where nothing matters.
 */
export function measureFirstNote(
  found: readonly CornerSensitivity[] | string | null,
  at: { axle: Axle; side: CornerResult['side'] },
  spread: FoundSpread,
): string {
  if (found === null) return isCounted(spread) ? 'Finding what to measure first.' : '';
  if (typeof found === 'string') return '';
  const first = found.find(({ axle, side }) => axle === at.axle && side === at.side)?.measureFirst;
  return first ? `Measure first: ${nameOf(first.key)} (±${kelvins(first.moves_K)}).` : '';
}
