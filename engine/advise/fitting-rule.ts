/**
 * When to fit which panel: a rule of at most three plain distinctions (an ambient, behind another car or not, wet or not), the
 * one with the least regret. Found exactly: what is best for a part of the conditions does not depend on the rest, so every way
 * to cut them is built up from the best ways to cut its parts.
 */

/** A condition as a rule sees it. */
export interface Seen {
  /** Place of its ambient among the cells. */
  cell: number;
  isFollowing: boolean;
  isWet: boolean;
  /** What each panel of the set would cost here, an open mouth first. */
  costs: readonly Cost[];
}

/** In whole numbers, so that sums are exact; what is lost outside the window counts before any kelvin. */
export interface Cost {
  /** Weight of what another panel of the set would keep in and this one does not [millionths] */
  lost: number;
  /** Weight times kelvin of weighed margin given away [millionths times 0.1 K] */
  regret: number;
}

/** A part of the conditions and the panel for it; null: no matter. */
export interface RuleLeaf {
  /** From this cell on, and up to before that one. */
  fromCell: number | null;
  toCell: number | null;
  isFollowing: boolean | null;
  isWet: boolean | null;
  /** Place in the set, 0 for an open mouth. */
  panel: number;
}

export interface Rule {
  leaves: RuleLeaf[];
  /** How many distinctions it makes. */
  thresholds: number;
  cost: Cost;
}

/** A fourth is not read. Common practice, no source. */
const MOST_THRESHOLDS = 3;
/** One more distinction must keep more in, or save so much on average [K] */
const LEAST_GAIN_K = 1;

interface Part {
  from: number;
  to: number;
  isFollowing: boolean | null;
  isWet: boolean | null;
}

/** The rule with the fewest distinctions that is as good as that with the most allowed, or nearly. */
export function bestRule(seen: readonly Seen[], most = MOST_THRESHOLDS): Rule {
  const rules = ruleFinder(seen);
  const finest = rules(most);
  const weight = 1e6;
  const spare = 10 * LEAST_GAIN_K * weight;
  for (let thresholds = 0; thresholds < most; thresholds++) {
    const { cost, ...rule } = rules(thresholds);
    const isAsGood = cost.lost === finest.cost.lost && cost.regret <= finest.cost.regret + spare;
    if (isAsGood) return { ...rule, cost };
  }
  return finest;
}

/** The least costly rule of at most so many distinctions; of two that cost the same, the one with fewer. */
export function ruleFinder(seen: readonly Seen[]): (most: number) => Rule {
  const cells = 1 + Math.max(...seen.map(({ cell }) => cell));
  const known = new Map<string, Rule>();

  function best(part: Part, most: number): Rule {
    const key = [part.from, part.to, part.isFollowing, part.isWet, most].join();
    const found = known.get(key);
    if (found) return found;
    let rule = leafFor(seen, part, cells);
    if (most > 0)
      for (const [one, other] of cuts(part))
        for (let first = 0; first < most; first++) {
          const [a, b] = [best(one, first), best(other, most - 1 - first)];
          const whole = {
            leaves: [...a.leaves, ...b.leaves],
            thresholds: a.thresholds + b.thresholds + 1,
            cost: { lost: a.cost.lost + b.cost.lost, regret: a.cost.regret + b.cost.regret },
          };
          if (isBetter(whole, rule)) rule = whole;
        }
    known.set(key, rule);
    return rule;
  }

  return (most) => best({ from: 0, to: cells, isFollowing: null, isWet: null }, most);
}

function isBetter(a: Rule, b: Rule): boolean {
  const by = compare(a.cost, b.cost);
  return by < 0 || (by === 0 && a.thresholds < b.thresholds);
}

const compare = (a: Cost, b: Cost): number => a.lost - b.lost || a.regret - b.regret;

/** All ways to cut a part in two by one distinction. */
function cuts(part: Part): [Part, Part][] {
  const found: [Part, Part][] = [];
  for (let at = part.from + 1; at < part.to; at++)
    found.push([
      { ...part, to: at },
      { ...part, from: at },
    ]);
  for (const key of ['isFollowing', 'isWet'] as const)
    if (part[key] === null)
      found.push([
        { ...part, [key]: true },
        { ...part, [key]: false },
      ]);
  return found;
}

/** One panel for all of a part: the least costly, of two the more open. */
function leafFor(seen: readonly Seen[], part: Part, cells: number): Rule {
  const there = seen.filter((each) => isIn(each, part));
  const costs = seen[0]!.costs.map((_, panel) => ({
    lost: there.reduce((sum, { costs }) => sum + costs[panel]!.lost, 0),
    regret: there.reduce((sum, { costs }) => sum + costs[panel]!.regret, 0),
  }));
  const panel = costs.reduce((least, cost, i) => (compare(cost, costs[least]!) < 0 ? i : least), 0);
  const { from, to, isFollowing, isWet } = part;
  const fromCell = from === 0 ? null : from;
  const toCell = to === cells ? null : to;
  return { leaves: [{ fromCell, toCell, isFollowing, isWet, panel }], thresholds: 0, cost: costs[panel]! };
}

const isIn = ({ cell, isFollowing, isWet }: Seen, part: Part): boolean =>
  cell >= part.from &&
  cell < part.to &&
  (part.isFollowing ?? isFollowing) === isFollowing &&
  (part.isWet ?? isWet) === isWet;

/** The panel that a rule names for a condition. */
export function panelBy(
  { leaves }: Pick<Rule, 'leaves'>,
  { cell, isFollowing, isWet }: Omit<Seen, 'costs'>,
): number {
  const leaf = leaves.find(
    (each) =>
      cell >= (each.fromCell ?? 0) &&
      cell < (each.toCell ?? Infinity) &&
      (each.isFollowing ?? isFollowing) === isFollowing &&
      (each.isWet ?? isWet) === isWet,
  );
  if (!leaf) throw new Error(`no panel for cell ${cell}`);
  return leaf.panel;
}
