/** Rounding of parts so that what is printed adds up. */

/**
 * Parts as whole numbers of a unit that add up to `whole`: each is rounded down, and those that lose most are given one more,
 * until the sum is right. No part is off by a unit.
 *
 * @param parts - none negative
 * @param whole - a whole number: what the parts make together
 */
export function apportioned(parts: readonly number[], whole: number): number[] {
  const sum = parts.reduce((total, part) => total + part, 0);
  if (sum <= 0) return parts.map(() => 0);
  const shares = parts.map((part, i) => {
    const exact = (part / sum) * whole;
    return { i, part, floor: Math.floor(exact), lost: exact - Math.floor(exact) };
  });
  const missing = whole - shares.reduce((total, { floor }) => total + floor, 0);
  const order = shares.toSorted((a, b) => b.lost - a.lost || b.part - a.part || a.i - b.i);
  const given = new Set(order.slice(0, missing));
  return shares.map((share) => share.floor + (given.has(share) ? 1 : 0));
}
