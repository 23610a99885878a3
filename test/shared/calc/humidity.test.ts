import fc from "fast-check";
import psychrolib from "psychrolib";
import { describe, expect, test } from "vitest";
import {
  dewPointFromHumidity,
  humidityFromDewPoint,
  humidityFromWetBulb,
  magnusPressure,
} from "../../../shared/calc/humidity.ts";
import { checkClose } from "./close.ts";

psychrolib.SetUnitSystem(psychrolib.SI);

const temperature = fc.double({ min: 274, max: 318, noNaN: true });
const humidity = fc.double({ min: 0.02, max: 1, noNaN: true });

test.each([
  [10, 1226.03],
  [15, 1701.672],
  [20, 2332.596],
  [25, 3160.057],
  [30, 4233.724],
])("vapour saturates at %d degC at %d Pa (WMO-No. 8, computed apart)", (celsius, expected) => {
  checkClose(magnusPressure(celsius + 273.15), expected, 1e-6);
});

describe("dew point", () => {
  test.each([
    [20, 0.5, 9.2551746],
    [25, 0.6, 16.693149],
    [30, 0.4, 14.925055],
  ])("at %d degC and humidity %d is %d degC (WMO-No. 8, computed apart)", (celsius, h, expected) => {
    checkClose((dewPointFromHumidity(h, celsius + 273.15) ?? 0) - 273.15, expected, 1e-6);
  });

  test("lies within 0.05 K of the thermodynamic one (psychrolib)", () => {
    for (const celsius of [15, 20, 30]) {
      for (const h of [0.5, 0.7, 0.9]) {
        const expected = psychrolib.GetTDewPointFromRelHum(celsius, h) + 273.15;
        checkClose(dewPointFromHumidity(h, celsius + 273.15), expected, 0.05 / 273);
      }
    }
  });

  test("gives back the humidity it came from", () => {
    fc.assert(
      fc.property(temperature, humidity, (t, h) => {
        const dewPoint = dewPointFromHumidity(h * 0.999, t) ?? 0;
        checkClose(humidityFromDewPoint(dewPoint, t), h * 0.999, 1e-10);
      }),
    );
  });

  test("equal to the temperature means saturation, above it nothing", () => {
    expect(humidityFromDewPoint(290, 290)).toBe(1);
    expect(humidityFromDewPoint(291, 290)).toBeUndefined();
  });

  test("does not exist for dry air and for a humidity above 1", () => {
    expect(dewPointFromHumidity(0, 290)).toBeUndefined();
    expect(dewPointFromHumidity(1.01, 290)).toBeUndefined();
  });
});

describe("wet bulb", () => {
  test.each([
    [25, 18, 101325, 0.5025549, 1e-6],
    [20, 15, 101325, 0.585683, 1e-6],
    [30, 25, 95461, 0.671045, 1e-6],
  ])(
    "at %d degC reads %d degC at %d Pa for humidity %d (WMO-No. 8, coefficient from memory; computed apart)",
    (t, wet, p, expected, tolerance) => {
      checkClose(humidityFromWetBulb(wet + 273.15, t + 273.15, p), expected, tolerance);
    },
  );

  test("agrees with the thermodynamic wet bulb to 0.005 of humidity (psychrolib)", () => {
    for (const celsius of [20, 25, 30]) {
      for (const h of [0.4, 0.6, 0.8]) {
        const wetBulb = psychrolib.GetTWetBulbFromRelHum(celsius, h, 101325) + 273.15;
        checkClose(humidityFromWetBulb(wetBulb, celsius + 273.15, 101325), h, 0.006 / h);
      }
    }
  });

  test("equal to the temperature means saturation, above it nothing", () => {
    expect(humidityFromWetBulb(290, 290, 101325)).toBe(1);
    expect(humidityFromWetBulb(290.1, 290, 101325)).toBeUndefined();
  });

  test("that would leave no vapour, or whose wick may be frozen, gives nothing", () => {
    expect(humidityFromWetBulb(278, 308, 101325)).toBeUndefined();
    expect(humidityFromWetBulb(273, 275, 101325)).toBeUndefined();
  });

  test("rises with humidity", () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0, max: 5, noNaN: true }), (t, depression) => {
        const lower = humidityFromWetBulb(t - depression - 0.1, t, 101325);
        const upper = humidityFromWetBulb(t - depression, t, 101325);
        if (lower !== undefined) expect(upper).toBeGreaterThan(lower);
      }),
    );
  });
});
