import { expect, test } from "vitest";
import { epochOf } from "../../../shared/calc/calendar.ts";

test.each([
  ["2026-03-07T10:15+01:00", Date.UTC(2026, 2, 7, 9, 15)],
  ["2026-03-07T10:15-05:30", Date.UTC(2026, 2, 7, 15, 45)],
  ["2026-03-07T10:15Z", Date.UTC(2026, 2, 7, 10, 15)],
  ["2026-03-07T10:15", Date.UTC(2026, 2, 7, 10, 15)],
  ["2026-03-07", Date.UTC(2026, 2, 7, 12)],
  ["yesterday", undefined],
])("%s", (date, epoch) => {
  expect(epochOf(date)).toBe(epoch);
});
