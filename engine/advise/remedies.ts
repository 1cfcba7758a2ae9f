/** What would help a corner that no blanking keeps in: each remedy is tried, and told by what it gains. */
import { leastBlanking } from '../duct/least-blanking.ts';
import { valueAt } from '../scenario/tree.ts';
import { override, type Changes } from '../scenario/override.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Axle, CornerResult } from '../stint/result.ts';
import { bestBlanking, looksAt } from './look.ts';
import { together, type Steps } from './search.ts';
import { isHelpless, smallerMargin_K, type Remedy, type SafeSpan, type Spare } from './span.ts';

/** Sizes of a remedy: what a crew or a driver can do at once. Common practice, no source. */
const SOFTER = 0.9;
const BALANCE_POINTS = 0.02;
const CHEEK_MM = 1;
const SEALED = 0.5;
/** Less than this is no help [K] */
const LEAST_GAIN_K = 2;
const MOST_TOLD = 3;

interface Of {
  axle: Axle;
  side: CornerResult['side'];
  best: Spare;
}

/** The same spans; those of corners that nothing keeps in, with what would help. Corners are searched side by side. */
export function* withRemedies(scenario: Scenario, spans: readonly SafeSpan[]): Steps<SafeSpan[]> {
  return yield* together(spans.map((span) => helped(scenario, span)));
}

function* helped(scenario: Scenario, span: SafeSpan): Steps<SafeSpan> {
  const { none, best, axle, side } = span;
  if (!none || !best || !isHelpless(span)) return span;
  return { ...span, none: { ...none, remedies: yield* remedies(scenario, { axle, side, best }) } };
}

/** The remedies that gain most, at most three, each with the other values left alone; tried side by side. */
function* remedies(scenario: Scenario, of: Of): Steps<Remedy[]> {
  const before_K = smallerMargin_K(of.best);
  const tried = candidates(scenario, of.axle).filter(
    ({ key, to, along }) => override(scenario, { ...along, [key]: to }).ok,
  );
  const after_K = yield* together(
    tried.map(({ key, to, along }) => bestMargin(scenario, { ...along, [key]: to }, of)),
  );
  return tried
    .map(({ key, to }, i) => ({
      key,
      from: valueAt(scenario, key) as number,
      to,
      gain_K: after_K[i]! - before_K,
    }))
    .filter(({ gain_K }) => gain_K >= LEAST_GAIN_K)
    .sort((a, b) => b.gain_K - a.gain_K)
    .slice(0, MOST_TOLD);
}

function* bestMargin(scenario: Scenario, changes: Changes, { axle, side }: Of): Steps<number> {
  const found = looksAt(scenario, changes).find(({ corner }) => corner.axle === axle && corner.side === side);
  if (!found) return -Infinity;
  const { duct } = found.corner.brake;
  const at = yield* bestBlanking(found.look, duct ? leastBlanking(duct) : 0);
  return smallerMargin_K((yield* found.look(at)).verdict);
}

interface Candidate {
  key: string;
  to: number;
  /** What must change along with it. */
  along?: Changes;
}

function candidates({ driver, car, brakes, conditions }: Scenario, axle: Axle): Candidate[] {
  const { disc, duct } = brakes[axle];
  const grip = conditions.wet ? 'grip_share_braking_wet' : 'grip_share_braking_dry';
  const away = axle === 'front' ? -BALANCE_POINTS : BALANCE_POINTS;
  const balance = (by: number): Candidate => ({
    key: 'car.brake_balance_front',
    to: Number((car.brake_balance_front + by).toFixed(3)),
  });
  const at = `brakes.${axle}.`;
  const thicker: Candidate = {
    key: `${at}disc.cheek_mm`,
    to: disc.cheek_mm + CHEEK_MM,
    along: {
      [`${at}disc.thickness_mm`]: disc.thickness_mm + 2 * CHEEK_MM,
      [`${at}disc.ring_mass_kg`]:
        disc.ring_mass_kg * (1 + (2 * CHEEK_MM) / (disc.thickness_mm - disc.gap_mm)),
    },
  };
  const air: Candidate[] = duct
    ? [
        { key: `${at}duct.hoses`, to: duct.hoses + 1 },
        { key: `${at}duct.leak_cm2`, to: Math.round(duct.leak_cm2 * SEALED) },
      ]
    : [];
  const softer = { key: `driver.${grip}`, to: Number((SOFTER * driver[grip]).toFixed(3)) };
  return [softer, balance(away), balance(-away), thicker, ...air];
}
