import { describe, expect, test } from "vitest";
import { airDensity } from "../../../shared/calc/moist-air.ts";
import { findReferenceAir, referenceAirs } from "../../../shared/calc/reference-air.ts";
import { checkClose } from "./close.ts";

describe("a named reference air", () => {
  test.each([
    ["isa", 1.225],
    ["iso-13443", 1.225],
    ["din-1343", 1.292271],
    ["iupac-stp", 1.275372],
    ["dry-20C", 1.204106],
    ["sae-j607", 1.222591],
    ["sae-j1349", 1.156747],
    ["iso-1585", 1.15733],
  ])("%s has density %d as an ideal gas (computed apart, p / R T)", (name, expected) => {
    const { temperature, pressure, humidity } = findReferenceAir(name)?.air ?? {
      temperature: 1,
      pressure: 0,
    };
    checkClose(pressure / (287.05287 * temperature), expected, 1e-6);
    expect(humidity).toBe(0);
  });

  test("is moist-air density within 0.07 % of that of an ideal gas", () => {
    for (const { air } of referenceAirs) {
      checkClose(airDensity(air), air.pressure / (287.05287 * air.temperature), 7e-4);
    }
  });

  test("is found by its exact name only", () => {
    expect(findReferenceAir("ISA")).toBeUndefined();
    expect(findReferenceAir("")).toBeUndefined();
  });

  test("has a name of its own and a source", () => {
    expect(new Set(referenceAirs.map(({ name }) => name)).size).toBe(referenceAirs.length);
    for (const { source } of referenceAirs) expect(source).not.toBe("");
  });
});
