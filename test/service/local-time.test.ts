import { afterEach, expect, test, vi } from "vitest";
import { isDate } from "../../grammar/read-date.ts";
import { localTime } from "../../server/service/local-time.ts";

afterEach(() => vi.unstubAllEnvs());

// Offsets of the zones from the tz database; the language's own reader of dates says what they come to.
test.each([
  ["UTC", "2026-01-02T23:30+00:00"],
  ["Europe/Berlin", "2026-01-03T00:30+01:00"],
  ["America/St_Johns", "2026-01-02T20:00-03:30"],
])("the time in %s is written with its offset", (zone, written) => {
  vi.stubEnv("TZ", zone);
  const time = new Date("2026-01-02T23:30:00Z");
  expect(localTime(time)).toBe(written);
  expect(new Date(written).getTime()).toBe(time.getTime());
  expect(isDate(written)).toBe(true);
});
