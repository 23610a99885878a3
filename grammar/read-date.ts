// Reads dates as ISO 8601 writes them: a day, or a day with a time and its offset.

const form = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(?:Z|[+-](\d{2}):(\d{2})))?$/;

/** Whether the text is a calendar date of ISO 8601, alone or with a time of day and its offset from UTC. */
export function isDate(text: string): boolean {
  const match = form.exec(text);
  if (match === null) return false;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0, offsetHour = 0, offsetMinute = 0] =
    match.slice(1).map((part) => Number(part ?? 0));
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return false;
  return hour < 24 && minute < 60 && second < 60 && offsetHour < 24 && offsetMinute < 60;
}

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month === 2) return leap ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
