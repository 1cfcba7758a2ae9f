/** The browser's clock as an alarm. */
import type { Alarm } from './engine-client.ts';

export const browserAlarm: Alarm = (after_ms, ring) => {
  const timer = setTimeout(ring, after_ms);
  return () => clearTimeout(timer);
};
