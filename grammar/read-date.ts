// Reads dates as ISO 8601 writes them: a day, or a day with a time and its offset.

const form = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(?:Z|[+-](\d{2}):(\d{2})))?$/;

/** Whether the text is a calendar date of ISO 8601, alone or with a time of day and its offset from UTC. */
export function isDate(text: string): boolean {
  const match = form.exec(text);
  if (match === null) return false;
  const part = (group: number) => Number(match[group] ?? 0);
  const month = part(2);
  const day = part(3);
  if (month < 1 || month > 12 || day < 1 || day > daysIn(part(1), month)) return false;
  // Hour, minute and second, and the hour and minute of the offset.
  return part(4) < 24 && part(5) < 60 && part(6) < 60 && part(7) < 24 && part(8) < 60;
}

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month === 2) return leap ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
