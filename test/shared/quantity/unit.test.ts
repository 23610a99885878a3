// Units are found as people write them, never at a guess, and values survive the way to SI and back.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Dimension, dimensionName } from "../../../shared/quantity/dimension.ts";
import { quantity } from "../../../shared/quantity/quantity.ts";
import {
  convertible,
  findUnit,
  foldUnit,
  fromSI,
  nearestUnits,
  toSI,
  type Unit,
  unitsOf,
} from "../../../shared/quantity/unit.ts";
import { UNITS } from "../../../shared/quantity/units.ts";

const anyUnit = fc.constantFrom(...UNITS);

function unitNamed(symbol: string): Unit {
  const found = findUnit(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found.unit;
}

function checkVariant(text: string, symbol: string): void {
  const found = findUnit(text);
  expect(found && { symbol: found.unit.symbol, canonical: found.canonical }, text).toEqual({
    symbol,
    canonical: false,
  });
}

describe("finding a unit", () => {
  test("knows every symbol as canonical", () => {
    for (const unit of UNITS) expect(findUnit(unit.symbol)).toEqual({ unit, canonical: true });
  });

  test("is never ambiguous: no two rows share a spelling once letter case and signs are folded", () => {
    const owner = new Map<string, Unit>();
    for (const unit of UNITS) {
      for (const name of [unit.symbol, ...unit.names]) {
        expect(owner.get(foldUnit(name)) ?? unit, name).toBe(unit);
        owner.set(foldUnit(name), unit);
      }
    }
  });

  test("lists no spelling twice in a row of the table", () => {
    for (const unit of UNITS) {
      const folded = [unit.symbol, ...unit.names].map(foldUnit);
      expect(new Set(folded).size, unit.symbol).toBe(folded.length);
    }
  });

  test.each([
    ["°F", "degF"],
    ["ºF", "degF"],
    ["℉", "degF"],
    ["F", "degF"],
    ["DEGF", "degF"],
    ["°C", "degC"],
    ["k", "K"],
    ["°", "deg"],
    ['"', "in"],
    ["″", "in"],
    ["”", "in"],
    ["''", "in"],
    ["IN", "in"],
    ["in.", "in"],
    ["'", "ft"],
    ["′", "ft"],
    ["in²", "in2"],
    ["in^2", "in2"],
    ["cc", "cm3"],
    ["inH₂O", "inH2O"],
    ["INH2O", "inH2O"],
    ['"H2O', "inH2O"],
    ["inWC", "inH2O"],
    ["inH₂O@60°F", "inH2O@60degF"],
    ["inH2O@39.2F", "inH2O@39degF"],
    ['"Hg', "inHg"],
    ["CFM", "cfm"],
    ["ft³/min", "cfm"],
    ["l/s", "L/s"],
    ["m³/h", "m3/h"],
    ["M3/H", "m3/h"],
    ["RPM", "rpm"],
    ["N·m", "N.m"],
    ["Nm", "N.m"],
    ["in-lbf", "lbf.in"],
    ["hz", "Hz"],
    ["%rh", "%RH"],
    ["percent", "%"],
  ])("reads %s as %s and says that it is not canonical", checkVariant);

  test.each(["", "scfm", "torr", "psig", "MPa", "furlong", "inH20", "constructor", "in".repeat(1000)])(
    "does not know %s",
    (text) => {
      expect(findUnit(text)).toBeUndefined();
    },
  );

  test("takes any text without harm", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        findUnit(text);
        nearestUnits(text);
      }),
    );
  });
});

describe("the nearest units", () => {
  test.each([
    ["inH20", undefined, "inH2O"],
    ["inHO", undefined, "inH2O"],
    ["cmf", "flow", "cfm"],
    ["inhgg", undefined, "inHg"],
    ["kpA.", undefined, "kPa"],
    ["degf", "temperature", "degF"],
    ["mbr", "pressure", "mbar"],
  ] as const)("of %s (%s) begin with %s", (text, dimension, first) => {
    expect(nearestUnits(text, dimension)[0]).toBe(first);
  });

  test("are each named once and keep to the dimension", () => {
    expect(nearestUnits("inchs", "length")).toEqual(["in"]);
    expect(nearestUnits("cfm", "pressure")).not.toContain("cfm");
  });

  test("are none for a word like no unit", () => {
    expect(nearestUnits("quarterhorse")).toEqual([]);
    expect(nearestUnits("q".repeat(100_000))).toEqual([]);
  });
});

describe("dimensions", () => {
  test("have units in the order of the table", () => {
    expect(unitsOf("flow").map((unit) => unit.symbol)).toEqual([
      "cfm",
      "L/s",
      "L/min",
      "m3/h",
      "m3/min",
      "m3/s",
    ]);
    expect(unitsOf("signal").map((unit) => unit.symbol)).toEqual(["Hz", "V", "mV", "mA"]);
    expect(unitsOf("rotation").map((unit) => unit.symbol)).toEqual(["rpm", "Hz"]);
  });

  test("have names with an article", () => {
    for (const dimension of new Set<Dimension>(UNITS.flatMap((unit) => unit.dimensions))) {
      expect(dimensionName(dimension)).toMatch(/^an? [a-z ]+$/);
    }
  });

  test("do not let a current or a frequency pass for a voltage, nor a humidity for a ratio", () => {
    expect(convertible(unitNamed("mV"), unitNamed("V"))).toBe(true);
    expect(convertible(unitNamed("mA"), unitNamed("V"))).toBe(false);
    expect(convertible(unitNamed("Hz"), unitNamed("V"))).toBe(false);
    expect(convertible(unitNamed("rpm"), unitNamed("Hz"))).toBe(true);
    expect(convertible(unitNamed("%"), unitNamed("1"))).toBe(true);
    expect(convertible(unitNamed("%"), unitNamed("%RH"))).toBe(false);
  });

  test("hold units that all convert into each other, signals apart", () => {
    fc.assert(
      fc.property(anyUnit, anyUnit, (a, b) => {
        const shared = a.dimensions.filter((dimension) => b.dimensions.includes(dimension));
        const expected = shared.some((dimension) => dimension !== "signal" || a.si === b.si);
        expect(convertible(a, b)).toBe(expected);
        expect(convertible(b, a)).toBe(expected);
      }),
    );
  });
});

describe("conversion", () => {
  test("to SI and back returns the value within a few units in the last place", () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: -1e9, max: 1e9, noNaN: true }), (unit, value) => {
        const back = fromSI(toSI(value, unit), unit);
        const scale = Math.max(Math.abs(value), unit.offset, 1e-290);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(4 * Number.EPSILON * scale);
      }),
    );
  });

  test("keeps the order of values", () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(anyUnit, value, value, (unit, a, b) => {
        if (a <= b) expect(toSI(a, unit)).toBeLessThanOrEqual(toSI(b, unit));
      }),
    );
  });

  test("of a quantity keeps its digits and takes its step as a difference", () => {
    const lift = quantity("0.400", 0.4, 0.001, unitNamed("in"));
    expect(lift).toEqual({ value: 0.4 * 0.0254, unit: unitNamed("in"), text: "0.400", step: 0.001 * 0.0254 });
    const air = quantity("71.5", 71.5, 0.1, unitNamed("degF"));
    expect(air.value).toBeCloseTo((71.5 + 459.67) / 1.8, 10);
    expect(air.step).toBeCloseTo(0.1 / 1.8, 12);
  });
});
