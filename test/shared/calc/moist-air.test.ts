import fc from "fast-check";
import psychrolib from "psychrolib";
import { describe, expect, test } from "vitest";
import {
  airDensity,
  enhancementFactor,
  saturationPressure,
  waterMoleFraction,
} from "../../../shared/calc/moist-air.ts";
import { checkClose } from "./close.ts";

psychrolib.SetUnitSystem(psychrolib.SI);

const workshopAir = fc.record({
  temperature: fc.double({ min: 278.15, max: 308.15, noNaN: true }),
  pressure: fc.double({ min: 70000, max: 108000, noNaN: true }),
  humidity: fc.double({ min: 0, max: 1, noNaN: true }),
});

function checkDensity(
  celsius: number,
  pressure: number,
  humidity: number,
  expected: number,
  tolerance: number,
) {
  checkClose(airDensity({ temperature: celsius + 273.15, pressure, humidity }), expected, tolerance);
}

describe("density of moist air", () => {
  test.each([
    [20, 101325, 0.5, 1.1993139],
    [20, 101325, 0, 1.2045573],
    [25, 101325, 0.5, 1.1773154],
    [22, 98000, 0.4, 1.1523869],
    [25, 99000, 0, 1.1571176],
    [15, 101325, 0, 1.2255213],
    [20, 75000, 0.5, 0.88627659],
  ])("at %d degC, %d Pa, humidity %d (CIPM-2007, computed apart with numpy)", (t, p, h, expected) => {
    checkDensity(t, p, h, expected, 1e-7);
  });

  test("at 10 degC, 730 mmHg, 40 % (S. V. Gupta, Mass Metrology, page 205, printed)", () => {
    checkDensity(10, 730 * 133.322387415, 0.4, 1.19569, 2e-5);
  });

  test("is that of an ideal mixture to 0.07 % (psychrolib, ASHRAE formulas)", () => {
    fc.assert(
      fc.property(workshopAir, (air) => {
        const celsius = air.temperature - 273.15;
        const ratio = psychrolib.GetHumRatioFromRelHum(celsius, air.humidity, air.pressure);
        checkClose(airDensity(air), psychrolib.GetMoistAirDensity(celsius, ratio, air.pressure), 7e-4);
      }),
    );
  });

  test("differs from an ideal mixture by compressibility alone (Z of CIPM-2007; psychrolib 1.1988980)", () => {
    const density = airDensity({ temperature: 293.15, pressure: 101325, humidity: 0.5 });
    checkClose(density * 0.99961477, 1.198898, 5e-5);
  });

  test("falls with temperature and humidity and rises with pressure", () => {
    fc.assert(
      fc.property(workshopAir, (air) => {
        const density = airDensity(air);
        expect(airDensity({ ...air, temperature: air.temperature + 0.1 })).toBeLessThan(density);
        expect(airDensity({ ...air, humidity: air.humidity + 0.01 })).toBeLessThan(density);
        expect(airDensity({ ...air, pressure: air.pressure + 10 })).toBeGreaterThan(density);
      }),
    );
  });
});

describe("water vapour", () => {
  test("saturates at the pressures of CIPM-2007 (computed apart with numpy)", () => {
    checkClose(saturationPressure(293.15), 2339.1632, 1e-7);
    checkClose(saturationPressure(298.15), 3169.757, 1e-7);
    checkClose(saturationPressure(295.15), 2645.1797, 1e-7);
  });

  test("saturates within 0.1 % of 40 CFR 1065.645(b) and (c), printed: another formula", () => {
    checkClose(saturationPressure(282.65), 1186.581, 1e-3);
    checkClose(saturationPressure(293.15), 2337.1, 1e-3);
  });

  test("saturates within 0.1 % of psychrolib from 10 to 40 degC", () => {
    for (let celsius = 10; celsius <= 40; celsius += 5) {
      checkClose(saturationPressure(celsius + 273.15), psychrolib.GetSatVapPres(celsius), 1e-3);
    }
  });

  test("is enhanced as in CIPM-2007 (computed apart with numpy)", () => {
    checkClose(enhancementFactor(293.15, 101325), 1.0040256, 1e-7);
    checkClose(enhancementFactor(293.15, 75000), 1.003199, 1e-7);
  });

  test("takes the mole fraction of CIPM-2007 (computed apart with numpy)", () => {
    checkClose(waterMoleFraction({ temperature: 293.15, pressure: 101325, humidity: 0.5 }), 0.01158934, 1e-6);
    checkClose(waterMoleFraction({ temperature: 293.15, pressure: 75000, humidity: 0.5 }), 0.015644308, 1e-7);
    expect(waterMoleFraction({ temperature: 293.15, pressure: 101325, humidity: 0 })).toBe(0);
  });
});
