/** How things stand with the sheet, in a few words: whether it needs the network, and when it was kept. Pure. */

export interface Standing {
  isReady: boolean;
  /** When the work was kept in the browser, milliseconds since 1970; null before. */
  savedAt_ms: number | null;
  /** Why the work cannot be kept; empty where it can. */
  problem: string;
  /** The worker died and what it was at was begun again. */
  hasRestarted: boolean;
}

/** "Ready without network, saved 14:32" */
export function standingWords({ isReady, savedAt_ms, problem, hasRestarted }: Standing): string {
  if (problem) return problem;
  if (hasRestarted) return 'Calculation was restarted, nothing is lost';
  const saved = savedAt_ms === null ? '' : `saved ${clockOf(savedAt_ms)}`;
  const words = [isReady ? 'Ready without network' : '', saved].filter(Boolean).join(', ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** "14:32", as the clock on the wall shows it. */
function clockOf(at_ms: number): string {
  const at = new Date(at_ms);
  return [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
}
