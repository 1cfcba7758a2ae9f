/** The phases of a stint in words: a line each for the list, short marks for the chart, one sentence for all. */
import { unitOf } from '../../engine/scenario/field.ts';
import { drivers } from '../../engine/scenario/drivers.ts';
import { clockTime, decimal, digitsOf, NBSP, percent, withUnit } from './format.ts';
import { gapOf, isStand, namesGap, type Change, type PhasePlan, type PlannedPhase } from './phase-plan.ts';

/** "45 s", "10 min", "2:30 min" */
export function standTime(duration_s: number): string {
  if (duration_s < 100) return withUnit(duration_s, 's');
  return duration_s % 60 === 0 ? withUnit(duration_s / 60, 'min') : `${clockTime(duration_s)}${NBSP}min`;
}

/** "Push, 9 laps", "Out-lap", "Stop 45 s" */
export function phaseName({ phase, laps }: PlannedPhase): string {
  if (isStand(phase)) return `Stop${NBSP}${standTime(phase.duration_s)}`;
  const isSingle = laps === 1 && (phase.kind === 'out' || phase.kind === 'in');
  if (isSingle) return KINDS[phase.kind];
  if (laps === 0) return `${KINDS[phase.kind]}, no lap left`;
  const count = lapCount(laps);
  return `${KINDS[phase.kind]}, ${phase.laps === null ? `the remaining ${count}` : count}`;
}

/** "1 lap", "20 laps" */
const lapCount = (laps: number): string => `${decimal(laps)}${NBSP}${laps === 1 ? 'lap' : 'laps'}`;

/** "2 phases, 1 lap" */
export const planSize = (phases: number, laps: number): string =>
  `${phases} ${phases === 1 ? 'phase' : 'phases'}, ${laps} ${laps === 1 ? 'lap' : 'laps'}`;

const KINDS = { out: 'Out-lap', push: 'Push', safety: 'Safety car', in: 'In-lap' };

/** What else there is to say: traffic, then everything that changes. Empty for a plain phase. */
export function phaseDetail(planned: PlannedPhase): string {
  const { phase, changes } = planned;
  const held = isStand(phase) && phase.brake_held ? ['brake held'] : [];
  return [...held, ...trafficWords(planned), ...changeWords(changes)].join(', ');
}

/** "0.8 s behind for half the lap", "out of line above 220 km/h", "no tow"; the stint's own gap is not told again. */
function trafficWords(planned: PlannedPhase): string[] {
  const { phase } = planned;
  if (isStand(phase)) return [];
  const gap = gapOf(planned);
  const { traffic_share: share = 1, pull_out_kmh, tow = true } = phase;
  if (!gap || share === 0) return isStintInTraffic(planned) ? ['clear air'] : [];
  return [
    behindWords(namesGap(phase) ? gap : null, share),
    typeof pull_out_kmh === 'number' ? `out of line above ${withUnit(pull_out_kmh, 'km/h')}` : '',
    tow ? '' : 'no tow',
  ].filter(Boolean);
}

/** "0.8 s behind for half the lap"; without a distance only the share, "in traffic for half the lap". */
function behindWords(gap: ReturnType<typeof gapOf>, share: number): string {
  if (!gap) return share === 1 ? '' : `in traffic${shareWords(share)}`;
  const distance = gap.gap_m === null ? exact(gap.gap_s ?? 0, 's') : exact(gap.gap_m, 'm');
  return `${distance} behind${shareWords(share)}`;
}

const isStintInTraffic = ({ now: { traffic } }: PlannedPhase): boolean =>
  typeof traffic.gap_m === 'number' || typeof traffic.gap_s === 'number';

/** With the decimals it has, at most so many. */
const exact = (value: number, unit: string, most = 2): string => withUnit(value, unit, digitsOf(value, most));

function shareWords(share: number): string {
  if (share === 1) return '';
  return share === 0.5 ? ' for half the lap' : ` for ${percent(share * 100)} of the lap`;
}

/** "tape front 70 to 40 %", "tape front left 58, right 30 to 0 %", "wet", "11 °C", "60 kg fuel", "driver Early and soft" */
function changeWords(changes: readonly Change[]): string[] {
  return changes.map((change) => {
    const { key, to } = change;
    if (key === 'conditions.wet') return to === true ? 'wet' : 'dry';
    if (key === 'conditions.ambient_C') return withUnit(Number(to), '°C');
    if (key === 'car.fuel_kg') return `${withUnit(Number(to), 'kg')} fuel`;
    if (key === 'car.brake_balance_front') return `balance ${exact(Number(to) * 100, '%', 1)} front`;
    if (key === 'driver') return `driver ${driverName(to)}`;
    const place = tapeOn(key);
    if (place) return `tape ${place} ${fromWords(change)}to ${percent(Number(to))}`;
    return `${bareName(key)} ${exact(Number(to), unitOf(key))}`;
  });
}

/** "humidity" of `conditions.humidity_pct`: a key's own words, for the fields' labels are not there at first. */
function bareName(key: string): string {
  const name = key.split('.').at(-1) ?? key;
  return (unitOf(key) === '' ? name : name.replace(/_[^_]+$/, '')).replaceAll('_', ' ');
}

/** "70 ", or "left 58, right 30 " where the sides had their own. */
function fromWords({ from, fromSides }: Change): string {
  if (fromSides) return `left ${decimal(fromSides.left)}, right ${decimal(fromSides.right)} `;
  return from === null ? '' : `${decimal(Number(from))} `;
}

const driverName = (id: unknown): string => drivers.find((each) => each.id === id)?.name ?? 'changed';

/** "front", "rear left", or null for a key that is not about blanking. */
const tapeOn = (key: string): string | null =>
  key.startsWith('blanking_pct.') ? key.replace('blanking_pct.', '').replace('_', ' ') : null;

/** The same as short as it goes, most telling first: "tape 40 %", "wet", "11 °C", "driver", "fuel". */
export function changeMarks(changes: readonly Change[]): string[] {
  const tape = changes.filter(({ key }) => tapeOn(key)).map(({ to }) => Number(to));
  const others = changes.filter(({ key }) => !tapeOn(key));
  const marks = others.map((change) => SHORT[change.key] ?? changeWords([change])[0] ?? '');
  return tape.length > 0
    ? [`tape ${tape.map((share) => decimal(share)).join('/')}${NBSP}%`, ...marks]
    : marks;
}

const SHORT: Record<string, string> = {
  driver: 'driver',
  'car.fuel_kg': 'fuel',
  'car.brake_balance_front': 'balance',
  'conditions.spray_g_per_m3': 'spray',
};

/** "7 phases, 30 laps: out-lap; push, 9 laps, wet; stop 45 s, tape front 70 to 40 %." */
export function phasesSummary(plan: PhasePlan): string {
  const laps = plan.reduce((sum, { laps }) => sum + laps, 0);
  const each = plan.map((planned) => phaseLine(planned));
  return `${planSize(plan.length, laps)}: ${each.join('; ')}.`;
}

/** "push, 9 laps, wet" */
function phaseLine(planned: PlannedPhase): string {
  const detail = phaseDetail(planned);
  const name = phaseName(planned);
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}${detail && `, ${detail}`}`;
}
