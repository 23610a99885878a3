// Turns a record's dates into numbers that time passes by, the same on every machine.

const DATE = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(?:Z|([+-])(\d{2}):?(\d{2}))?)?/;
const DAY = 86_400_000;

/**
 * Milliseconds since 1970-01-01 UTC of a date as records write it; a date without a time is its noon, a time without an
 * offset is taken as UTC. `undefined` for what is no date.
 */
export function epochOf(date: string): number | undefined {
  const match = DATE.exec(date);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second, sign, offsetHour, offsetMinute] = match;
  const noon = hour === undefined ? DAY / 2 : 0;
  const time = Date.UTC(
    Number(year),
    Number(month) - 1,
    Number(day),
    Number(hour ?? 0),
    Number(minute ?? 0),
    Number(second ?? 0),
  );
  const offset = (Number(offsetHour ?? 0) * 60 + Number(offsetMinute ?? 0)) * 60_000;
  return time + noon - (sign === "-" ? -offset : offset);
}

/** The day of a date: its first ten letters. */
export function dayOf(date: string): string {
  return date.slice(0, 10);
}
