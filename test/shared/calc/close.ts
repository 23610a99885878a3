// Most tests of calculations compare one number with a published one: this says how closely.

import { expect } from "vitest";

/** Checks that a number was computed and lies within a relative tolerance of the expected one. */
export function checkClose(actual: number | undefined, expected: number, relative: number): void {
  expect(actual, "was not computed").toBeTypeOf("number");
  expect(Math.abs((actual ?? Number.NaN) - expected), `${actual} is not ${expected}`).toBeLessThanOrEqual(
    Math.abs(expected) * relative,
  );
}
