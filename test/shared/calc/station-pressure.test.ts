import fc from "fast-check";
import psychrolib from "psychrolib";
import { describe, expect, test } from "vitest";
import { standardPressure, stationPressure } from "../../../shared/calc/station-pressure.ts";
import { checkClose } from "./close.ts";

psychrolib.SetUnitSystem(psychrolib.SI);

const pascalPerInchOfMercury = 3386.38864;

describe("station pressure from an altimeter setting", () => {
  test("at 500 m (Smithsonian Meteorological Tables 1951, page 269; values of the tests of MetPy)", () => {
    checkClose(stationPressure(101300, 500), 95463.9265, 1e-6);
    checkClose(stationPressure(29.8 * pascalPerInchOfMercury, 500), 95096.498, 1e-6);
  });

  test("lies within 0.04 % of the standard atmosphere's where the setting is standard", () => {
    for (const elevation of [0, 300, 1000, 2000]) {
      checkClose(stationPressure(101325, elevation), standardPressure(elevation) ?? 0, 4e-4);
    }
  });

  test("falls with elevation and rises with the setting", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 90000, max: 108000, noNaN: true }),
        fc.double({ min: -400, max: 4000, noNaN: true }),
        (altimeter, elevation) => {
          const pressure = stationPressure(altimeter, elevation) ?? 0;
          expect(stationPressure(altimeter, elevation + 1)).toBeLessThan(pressure);
          expect(stationPressure(altimeter + 10, elevation)).toBeGreaterThan(pressure);
        },
      ),
    );
  });

  test("is not computed above the air or for a setting that is not positive", () => {
    expect(stationPressure(101325, 60000)).toBeUndefined();
    expect(stationPressure(0, 100)).toBeUndefined();
    expect(stationPressure(-5, 100)).toBeUndefined();
  });
});

describe("pressure of the standard atmosphere", () => {
  test.each([
    [0, 101325],
    [1000, 97716.567],
    [1500, 95951.786],
    [5000, 84307.265],
  ])("at %d ft is %d Pa (U.S. Standard Atmosphere 1976, closed form computed apart)", (feet, expected) => {
    checkClose(standardPressure(feet * 0.3048), expected, 1e-7);
  });

  test("at 5000 ft is 12.228 psi (table of the 1976 atmosphere, printed)", () => {
    checkClose(standardPressure(1524), 12.228 * 6894.757293168361, 1e-4);
  });

  test("agrees with psychrolib from -400 to 4000 m", () => {
    for (let elevation = -400; elevation <= 4000; elevation += 400) {
      checkClose(standardPressure(elevation), psychrolib.GetStandardAtmPressure(elevation), 3e-6);
    }
  });

  test("ends at -5000 and 11000 m", () => {
    expect(standardPressure(-5001)).toBeUndefined();
    expect(standardPressure(11001)).toBeUndefined();
    checkClose(standardPressure(11000), 22632, 1e-4); // U.S. Standard Atmosphere 1976, from memory
  });
});
