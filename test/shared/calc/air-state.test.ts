import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airState, defaultAir, namedAir } from "../../../shared/calc/air-state.ts";
import { airDensity } from "../../../shared/calc/moist-air.ts";
import { referenceAirs } from "../../../shared/calc/reference-air.ts";
import type { StatedAir } from "../../../shared/model/model.ts";
import { readNumber } from "../../../shared/quantity/number.ts";
import { type Quantity, quantity } from "../../../shared/quantity/quantity.ts";
import { findUnit } from "../../../shared/quantity/unit.ts";
import { checkClose } from "./close.ts";

function q(text: string, symbol: string): Quantity {
  const unit = findUnit(symbol)?.unit;
  const read = readNumber(text);
  if (unit === undefined || !("value" in read)) throw new RangeError(`${text} ${symbol} is not a quantity`);
  return quantity(text, read.value, read.step, unit);
}

const TWENTY: StatedAir = { temperature: q("20", "degC"), pressure: q("101325", "Pa") };

describe("stated air", () => {
  test("of 20 degC, 101325 Pa and 50 % has 1.1993139 kg/m3 (CIPM-2007, computed apart)", () => {
    checkClose(airState({ ...TWENTY, humidity: q("50", "%RH") })?.density, 1.1993139, 1e-7);
  });

  test("without humidity is dry: 1.2045573 kg/m3 (CIPM-2007, computed apart)", () => {
    expect(airState(TWENTY)?.humidity).toBe(0);
    checkClose(airState(TWENTY)?.density, 1.2045573, 1e-7);
  });

  test("takes its humidity from a dew point or a wet bulb (Magnus form and psychrometer, computed apart)", () => {
    checkClose(airState({ ...TWENTY, dewPoint: q("9.2551746", "degC") })?.humidity, 0.5, 1e-7);
    const wetBulb = { temperature: q("25", "degC"), pressure: q("101325", "Pa"), wetBulb: q("18", "degC") };
    checkClose(airState(wetBulb)?.humidity, 0.502555, 2e-6);
  });

  test("takes its pressure from an altimeter setting and the elevation (Smithsonian form, MetPy test values)", () => {
    const altimeter = (text: string, symbol: string) =>
      airState({
        temperature: q("20", "degC"),
        altimeter: q(text, symbol),
        elevation: q("500", "m"),
      })?.pressure;
    checkClose(altimeter("1013", "hPa"), 95463.9265, 1e-6);
    checkClose(altimeter("29.8", "inHg"), 95096.498, 1e-6);
  });

  test("prefers a station pressure: an elevation beside it is only a check", () => {
    expect(airState({ ...TWENTY, elevation: q("500", "m") })).toEqual(airState(TWENTY));
  });

  test.each<[string, StatedAir]>([
    ["without a temperature", { pressure: q("101325", "Pa") }],
    ["without a pressure", { temperature: q("20", "degC") }],
    ["with an altimeter setting alone", { temperature: q("20", "degC"), altimeter: q("1013", "hPa") }],
    ["as hot as no shop is", { ...TWENTY, temperature: q("71", "degC") }],
    ["as cold as no shop is", { ...TWENTY, temperature: q("-51", "degC") }],
    ["of a pressure in the wrong unit", { ...TWENTY, pressure: q("29.92", "mbar") }],
    ["more than saturated", { ...TWENTY, humidity: q("101", "%RH") }],
    ["with a dew point above its temperature", { ...TWENTY, dewPoint: q("21", "degC") }],
    ["with a wet bulb above its temperature", { ...TWENTY, wetBulb: q("21", "degC") }],
  ])("%s is not known", (_, stated) => {
    expect(airState(stated)).toBeUndefined();
  });

  test("has a density uncertainty of 0.12896 % from 0.3 K, 50 Pa and 5 %RH (computed apart)", () => {
    const state = airState({ ...TWENTY, humidity: q("50", "%RH") });
    checkClose((state?.densityUncertainty ?? 0) / (state?.density ?? 1), 0.0012896, 1e-4);
  });

  test.each([
    ["dewPoint", "10", 0.001371418],
    ["wetBulb", "15", 0.001307739],
  ] as const)("takes 0.3 K for a %s instead (computed apart)", (name, celsius, expected) => {
    const state = airState({ ...TWENTY, [name]: q(celsius, "degC") });
    checkClose(state?.densityUncertainty, expected, 1e-5);
  });
});

describe("a named air", () => {
  test.each(referenceAirs.map(({ name, air }) => [name, air] as const))(
    "%s equals its own temperature, pressure and dryness written out",
    (name, air) => {
      const named = namedAir({ name });
      expect(named?.state).toMatchObject(air);
      const written = namedAir({
        temperature: q(String(air.temperature), "K"),
        pressure: q(String(air.pressure), "Pa"),
      });
      checkClose(written?.state.density, named?.state.density ?? 0, 1e-12);
    },
  );

  test("is what it is by definition, without uncertainty, and is called by its words", () => {
    expect(namedAir({ name: "isa" })).toMatchObject({ name: "isa", state: { densityUncertainty: 0 } });
    expect(namedAir({ ...TWENTY, humidity: q("40", "%RH") })).toMatchObject({
      name: "20 degC 101325 Pa 40 %RH",
      state: { densityUncertainty: 0 },
    });
  });

  test("that nobody knows is not known", () => {
    expect(namedAir({ name: "standard" })).toBeUndefined();
    expect(namedAir({ temperature: q("20", "degC") })).toBeUndefined();
  });
});

test("air that nobody states is that of ISO 2533 at sea level, known as well as a shop knows it", () => {
  checkClose(defaultAir.density, 1.2255213, 1e-7);
  expect(defaultAir.densityUncertainty).toBeGreaterThan(0);
});

test("the state of stated air is that of the density equation, whatever the units", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 850, max: 1050 }),
      fc.integer({ min: 0, max: 100 }),
      (celsius, hPa, percent) => {
        const expected = airDensity({
          temperature: celsius + 273.15,
          pressure: 100 * hPa,
          humidity: percent / 100,
        });
        const metric = airState({
          temperature: q(`${celsius}`, "degC"),
          pressure: q(`${hPa}`, "hPa"),
          humidity: q(`${percent}`, "%RH"),
        });
        const other = airState({
          temperature: q((celsius * 1.8 + 32).toFixed(6), "degF"),
          pressure: q((hPa / 10).toFixed(6), "kPa"),
          humidity: q(`${percent}`, "%RH"),
        });
        checkClose(metric?.density, expected, 1e-12);
        checkClose(other?.density, expected, 1e-9);
      },
    ),
  );
});
