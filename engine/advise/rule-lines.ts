/** A rule as it is read: a line a panel, the most closed first, each with when it is fitted. */
import { panelBy, type Rule, type RuleLeaf, type Seen } from './fitting-rule.ts';

/** All that is named must be so; what is null is no matter. */
export interface RuleCase {
  above_C: number | null;
  below_C: number | null;
  isFollowing: boolean | null;
  isWet: boolean | null;
}

export interface RuleLine {
  /** Place in the set, 0 for an open mouth. */
  panel: number;
  /** One of these is enough; a case that names nothing is always so. */
  when: RuleCase[];
}

export function ruleLines(
  rule: Pick<Rule, 'leaves'>,
  { seen, borders_C }: { seen: readonly Seen[]; borders_C: readonly number[] },
): RuleLine[] {
  const states = statesOf(seen);
  const panels = [...new Set(rule.leaves.map(({ panel }) => panel))].sort((a, b) => b - a);
  return panels.map((panel) => {
    const isAlso = (leaf: RuleLeaf): boolean =>
      states.every((state) => !isIn(state, leaf) || panelBy(rule, state) === panel);
    const own = rule.leaves.filter((leaf) => leaf.panel === panel).map((leaf) => widened(leaf, isAlso));
    const all = own.filter((leaf, i) => !own.some((other, k) => k !== i && holds(other, leaf, k < i)));
    return { panel, when: all.map((leaf) => caseOf(leaf, borders_C)) };
  });
}

type State = Omit<Seen, 'costs'>;

/** Every state that the event could have, whether it is likely or not. */
function statesOf(seen: readonly Seen[]): State[] {
  const cells = Array.from({ length: 1 + Math.max(...seen.map(({ cell }) => cell)) }, (_, cell) => cell);
  const kinds = (key: 'isFollowing' | 'isWet'): boolean[] => [...new Set(seen.map((each) => each[key]))];
  return cells.flatMap((cell) =>
    kinds('isFollowing').flatMap((isFollowing) =>
      kinds('isWet').map((isWet) => ({ cell, isFollowing, isWet })),
    ),
  );
}

const isIn = (state: State, leaf: RuleLeaf): boolean =>
  state.cell >= (leaf.fromCell ?? 0) &&
  state.cell < (leaf.toCell ?? Infinity) &&
  (leaf.isFollowing ?? state.isFollowing) === state.isFollowing &&
  (leaf.isWet ?? state.isWet) === state.isWet;

/** Without what need not be named, for the same panel is fitted where it is otherwise. */
function widened(leaf: RuleLeaf, isAlso: (leaf: RuleLeaf) => boolean): RuleLeaf {
  const keys = ['fromCell', 'toCell', 'isFollowing', 'isWet'] as const;
  return keys.reduce((at, key) => {
    const wider = { ...at, [key]: null };
    return isAlso(wider) ? wider : at;
  }, leaf);
}

/** Whether one case holds all of another; of two that are the same, only the earlier does. */
function holds(one: RuleLeaf, other: RuleLeaf, isEarlier: boolean): boolean {
  const isWider =
    (one.fromCell ?? 0) <= (other.fromCell ?? 0) &&
    (one.toCell ?? Infinity) >= (other.toCell ?? Infinity) &&
    [one.isFollowing ?? other.isFollowing, one.isWet ?? other.isWet].join() ===
      [other.isFollowing, other.isWet].join();
  const isSame = JSON.stringify(one) === JSON.stringify(other);
  return isWider && (isEarlier || !isSame);
}

const caseOf = (leaf: RuleLeaf, borders_C: readonly number[]): RuleCase => ({
  above_C: leaf.fromCell === null ? null : borders_C[leaf.fromCell]!,
  below_C: leaf.toCell === null ? null : borders_C[leaf.toCell]!,
  isFollowing: leaf.isFollowing,
  isWet: leaf.isWet,
});
