// Holds every row of the unit table against an independent library and the printed tables it is taken from.

import { createUnit, evaluate, unit as mathjsUnit } from "mathjs";
import { describe, expect, test } from "vitest";
import { findUnit, fromSI, toSI, type Unit } from "../../../shared/quantity/unit.ts";
import { UNITS } from "../../../shared/quantity/units.ts";

createUnit("cfm", evaluate("1 ft^3/minute"));
createUnit("conventionalInchOfWater", evaluate("0.0254 m * 1000 kg/m^3 * 9.80665 m/s^2"));
createUnit("conventionalMillimetreOfWater", evaluate("0.001 m * 1000 kg/m^3 * 9.80665 m/s^2"));
createUnit("conventionalInchOfMercury", evaluate("0.0254 m * 13595.1 kg/m^3 * 9.80665 m/s^2"));
createUnit("conventionalMillimetreOfMercury", evaluate("0.001 m * 13595.1 kg/m^3 * 9.80665 m/s^2"));

/** Each unit of ours in the words of mathjs; the two rounded water columns are checked against their printed values. */
const IN_MATHJS: Readonly<Record<string, string>> = {
  in: "inch",
  thou: "mil",
  ft: "foot",
  mm: "mm",
  cm: "cm",
  m: "m",
  in2: "inch^2",
  mm2: "mm^2",
  cm2: "cm^2",
  cm3: "cm^3",
  in3: "inch^3",
  inH2O: "conventionalInchOfWater",
  mmH2O: "conventionalMillimetreOfWater",
  inHg: "conventionalInchOfMercury",
  mmHg: "conventionalMillimetreOfMercury",
  Pa: "Pa",
  hPa: "hPa",
  kPa: "kPa",
  mbar: "mbar",
  bar: "bar",
  psi: "psi",
  cfm: "cfm",
  "L/s": "liter/s",
  "L/min": "liter/minute",
  "m3/h": "m^3/hour",
  "m3/min": "m^3/minute",
  "m3/s": "m^3/s",
  "kg/h": "kg/hour",
  "kg/s": "kg/s",
  "g/s": "gram/s",
  "lb/min": "lbm/minute",
  "lb/h": "lbm/hour",
  degF: "degF",
  degC: "degC",
  K: "K",
  degR: "degR",
  s: "s",
  ms: "ms",
  min: "minute",
  h: "hour",
  deg: "deg",
  rad: "rad",
  "ft/s": "foot/s",
  "m/s": "m/s",
  "ft/min": "foot/minute",
  Hz: "Hz",
  "N.m": "N m",
  "mN.m": "mN m",
  "lbf.in": "lbf inch",
  V: "V",
  mV: "mV",
  mA: "mA",
};

/** Without a counterpart in mathjs: rounded columns of water, and pure numbers. */
const NOT_IN_MATHJS = ["inH2O@60degF", "inH2O@39degF", "rpm", "%", "%RH", "1"];

const SI_IN_MATHJS: Readonly<Record<string, string>> = {
  m2: "m^2",
  m3: "m^3",
  "m3/s": "m^3/s",
  "N.m": "N m",
};

function unitNamed(symbol: string): Unit {
  const found = findUnit(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found.unit;
}

function checkSI(value: number, symbol: string, expected: number, relative = 1e-12): void {
  const error = Math.abs(toSI(value, unitNamed(symbol)) / expected - 1);
  expect(error, `${value} ${symbol} in SI, relative error`).toBeLessThanOrEqual(relative);
}

describe("the unit table", () => {
  test.each(Object.entries(IN_MATHJS))("%s agrees with mathjs 15.2.0", (symbol, name) => {
    const unit = unitNamed(symbol);
    for (const value of [1, 0.4, 28, 71.5]) {
      const expected = mathjsUnit(value, name).toNumber(SI_IN_MATHJS[unit.si] ?? unit.si);
      checkSI(value, symbol, expected, 1e-9);
    }
  });

  test("has no row that is left unchecked", () => {
    expect(UNITS.map((unit) => unit.symbol).toSorted()).toEqual(
      [...Object.keys(IN_MATHJS), ...NOT_IN_MATHJS].toSorted(),
    );
  });

  test("gives each unit a source, a finite positive factor and a dimension", () => {
    for (const unit of UNITS) {
      expect(unit.source).not.toBe("");
      expect(unit.factor).toBeGreaterThan(0);
      expect(unit.factor).toBeLessThan(Number.POSITIVE_INFINITY);
      expect(unit.dimensions.length).toBeGreaterThan(0);
    }
  });

  test("holds pure numbers as such and rotation as revolutions per second", () => {
    checkSI(35, "%", 0.35);
    checkSI(42, "%RH", 0.42);
    checkSI(0.62, "1", 0.62);
    checkSI(6000, "rpm", 100);
  });
});

describe("printed and computed values", () => {
  test("28 inH2O: exact definition, computed with mathjs, GNU units and decimal.js", () => {
    checkSI(28, "inH2O", 6974.48948, 1e-9);
  });

  test("inH2O: NIST SP 811 (2008), B.8, printed", () => {
    checkSI(1, "inH2O", 249.0889, 1e-6);
    checkSI(1, "inH2O@39degF", 249.082, 1e-6);
    checkSI(1, "inH2O@60degF", 248.84, 1e-6);
  });

  test("inHg, conventional: NIST SP 811 (2008), B.8, printed", () => {
    checkSI(1, "inHg", 3386.389, 1e-6);
  });

  test("1000.00 ft3/min = 0.471948 m3/s: 40 CFR 1065.640(a), printed", () => {
    checkSI(1000, "cfm", 0.471948, 2e-6);
  });

  test("1 psi: computed with mathjs and pint", () => {
    checkSI(1, "psi", 6894.757293168361, 1e-12);
  });

  test("100 cfm = 169.90107955 m3/h: computed with mathjs", () => {
    const inM3h = fromSI(toSI(100, unitNamed("cfm")), unitNamed("m3/h"));
    expect(inM3h).toBeCloseTo(169.90107955, 7);
  });

  test("temperatures: K = (degF + 459.67)/1.8, NIST SP 811 (2008), B.8", () => {
    checkSI(59, "degF", 288.15);
    checkSI(518.67, "degR", 288.15);
    checkSI(15, "degC", 288.15);
    checkSI(68, "degF", 293.15);
    checkSI(-459.67, "degF", 1, Number.POSITIVE_INFINITY);
    expect(toSI(-459.67, unitNamed("degF"))).toBe(0);
  });
});
