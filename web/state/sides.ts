/** Left and right of an axle: whether they differ, what each has, and how they are made equal again. */
import type { Axle, Changes, Duct, Scenario } from '../../engine/index.ts';
import { layOver } from '../../engine/scenario/tree.ts';

export type Side = 'left' | 'right';
export const SIDES: readonly Side[] = ['left', 'right'];

/** The side in hand at each axle. */
export type ChosenSides = Record<Axle, Side>;

/** Whether a side of the axle has anything of its own. */
export const isSplit = ({ blanking_pct, sides }: Scenario, axle: Axle): boolean =>
  SIDES.some(
    (side) => blanking_pct[`${axle}_${side}`] !== undefined || sides[`${axle}_${side}`] !== undefined,
  );

/** The side in hand where left and right differ, else null: both. */
export const sideInHand = (scenario: Scenario, axle: Axle, chosen: ChosenSides): Side | null =>
  isSplit(scenario, axle) ? chosen[axle] : null;

/** The key that a hand on the lever moves. */
export const blankingKey = (axle: Axle, side: Side | null): string =>
  `blanking_pct.${axle}${side ? `_${side}` : ''}`;

export const shareAt = ({ blanking_pct }: Scenario, axle: Axle, side: Side | null): number =>
  (side ? blanking_pct[`${axle}_${side}`] : undefined) ?? blanking_pct[axle];

/** The duct of a side: its axle's with its own values laid over. */
export function ductAt({ brakes, sides }: Scenario, axle: Axle, side: Side | null): Duct | null {
  const own = side ? sides[`${axle}_${side}`]?.['duct'] : undefined;
  return (own === undefined ? brakes[axle].duct : layOver(brakes[axle].duct, own)) as Duct | null;
}

/** Parts left from right: both start as they stand. */
export const splitChanges = (scenario: Scenario, axle: Axle): Changes =>
  Object.fromEntries(SIDES.map((side) => [blankingKey(axle, side), shareAt(scenario, axle, side)]));

/** The scenario without anything that one side of the axle has of its own: both are as the axle. */
export const equalised = (scenario: Scenario, axle: Axle): Scenario => ({
  ...scenario,
  sides: without(scenario.sides, axle),
  blanking_pct: without(scenario.blanking_pct, axle),
});

function without<T extends object>(table: T, axle: Axle): T {
  const own = SIDES.map((side) => `${axle}_${side}`);
  return Object.fromEntries(Object.entries(table).filter(([key]) => !own.includes(key))) as T;
}
