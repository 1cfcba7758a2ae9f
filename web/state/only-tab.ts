/** One tab at a time keeps the sheet: whoever holds the lock. It goes with the tab. */

const NAME = 'emberlap sheet';

/** A page that was just left gives its lock back within this [ms] */
const PATIENCE_MS = 1500;

/** Whether this tab is the one. Where the browser has no locks every tab is. */
export const takeTurn = (lost: () => void): Promise<boolean> =>
  hold({ signal: AbortSignal.timeout(PATIENCE_MS) }, lost);

/** This tab instead of the one that is. */
export const takeOver = (lost: () => void): Promise<boolean> => hold({ steal: true }, lost);

function hold(options: LockOptions, lost: () => void): Promise<boolean> {
  if (!('locks' in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    let isHeld = false;
    navigator.locks
      .request(NAME, options, () => {
        isHeld = true;
        resolve(true);
        return new Promise<never>(() => undefined); // until the tab is closed, or another takes it
      })
      .catch(() => {
        if (isHeld) lost();
        else resolve(false);
      });
  });
}
