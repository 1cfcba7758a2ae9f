/** Times of day and dates as loggers write them. The calendar is reckoned here: the engine has no clock of its own. */

const DAY_S = 86_400;
const HOUR_S = 3600;
const MINUTE_S = 60;

/** hh:mm:ss.fff, mm:ss.fff, mm:ss:fff, with decimal point or comma, with or without am and pm. */
const CLOCK = /^([+-])?(?:(\d{1,4}):)?(\d{1,2}):(\d{1,2})(?:[.,:](\d{1,9}))?(?:\s*([ap])\.?m\.?)?$/i;
const ZONE = /\s*(?:Z|UTC|GMT|([+-])(\d{2}):?(\d{2})?)$/i;
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:T|\s+|,\s*)(.+)$/i;
const YEAR_LAST = /^\d{1,2}([-/.])\d{1,2}\1\d{2,4}(?:T|\s+|,\s*)(.+)$/i;
const DATE = /^(\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{4}|\d{1,2}[-/]\d{1,2}[-/]\d{2})$/;

export const isDate = (cell: string): boolean => DATE.test(cell.trim());

/** Seconds since midnight, or since the minutes began; NaN where the cell is no clock. */
export function clockSeconds(cell: string): number {
  const parts = CLOCK.exec(cell.trim());
  if (!parts) return NaN;
  const [, sign, hours = '0', minutes, seconds, fraction = '0', half] = parts;
  if (Number(minutes) >= 60 && parts[2] !== undefined) return NaN;
  if (Number(seconds) >= 60) return NaN;
  const hour = half ? (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : Number(hours);
  const all = hour * HOUR_S + Number(minutes) * MINUTE_S + Number(`${seconds}.${fraction}`);
  return sign === '-' ? -all : all;
}

/**
 * Seconds since 1970 of a date with the year first; where the day comes first it cannot be told from the month, and the
 * time of day counts alone: what passes midnight is then seen as a clock that starts again.
 */
export function dateSeconds(cell: string): number {
  const text = cell.trim();
  const zone = ZONE.exec(text);
  const local = zone && zone.index > 10 ? text.slice(0, zone.index) : text;
  const zone_s =
    zone?.[1] === undefined
      ? 0
      : Number(`${zone[1]}1`) * (Number(zone[2]) * HOUR_S + Number(zone[3] ?? 0) * MINUTE_S);
  const first = YEAR_FIRST.exec(local);
  if (first) {
    return (
      daysSince1970(Number(first[1]), Number(first[3]), Number(first[4])) * DAY_S +
      clockSeconds(first[5]!) -
      zone_s
    );
  }
  const last = YEAR_LAST.exec(local);
  return last ? clockSeconds(last[2]!) : NaN;
}

/** Days of the Gregorian calendar, counted from March so that the leap day comes last. Source: ISO 8601, the calendar's rule. */
function daysSince1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const fromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * fromMarch + 2) / 5) + day - 1;
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leaps + dayOfYear - DAYS_TO_1970;
}

/** From 1 March of the year 0 to 1 January 1970 [d] */
const DAYS_TO_1970 = 719_468;
