import { describe, expect, test } from "vitest";
import { pitotSpeed } from "../../../shared/calc/velocity-map.ts";

describe("pitotSpeed", () => {
  // Bernoulli with its numbers put in: sqrt(2 * 500 / 1.2041) = 28.818324.
  test("is the root of twice the pressure over the density", () => {
    expect(pitotSpeed(500, 1.2041)).toBeCloseTo(28.818324, 6);
  });

  test("gives none for a pressure below zero", () => {
    expect(pitotSpeed(-1, 1.2)).toBeUndefined();
  });
});
