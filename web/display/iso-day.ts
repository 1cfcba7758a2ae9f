/** A day as ISO 8601 writes it. */

/** "2026-11-26", where the clock on the wall is. */
export function isoDay(now_ms: number): string {
  const now = new Date(now_ms);
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => `${part}`.padStart(2, '0'))
    .join('-');
}
