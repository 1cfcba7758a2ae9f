/** A rule as it is read: a line a panel, the most closed first, each with when it is fitted. */
import type { Rule, RuleLeaf, Seen } from './fitting-rule.ts';

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
  { leaves }: Pick<Rule, 'leaves'>,
  { seen, borders_C }: { seen: readonly Seen[]; borders_C: readonly number[] },
): RuleLine[] {
  const panels = [...new Set(leaves.map(({ panel }) => panel))].sort((a, b) => b - a);
  return panels.map((panel) => ({
    panel,
    when: leaves.filter((leaf) => leaf.panel === panel).map((leaf) => caseOf(leaf, seen, borders_C)),
  }));
}

/** What all conditions of the event share anyway is not named. */
function caseOf(leaf: RuleLeaf, seen: readonly Seen[], borders_C: readonly number[]): RuleCase {
  const isShared = (key: 'isFollowing' | 'isWet'): boolean =>
    seen.every((each) => each[key] === seen[0]![key]);
  return {
    above_C: leaf.fromCell === null ? null : borders_C[leaf.fromCell]!,
    below_C: leaf.toCell === null ? null : borders_C[leaf.toCell]!,
    isFollowing: isShared('isFollowing') ? null : leaf.isFollowing,
    isWet: isShared('isWet') ? null : leaf.isWet,
  };
}
