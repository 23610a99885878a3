// A weather report gives pressure reduced to sea level; density needs the pressure where the bench stands.

import { dryAirGasConstant } from "./dry-air.ts";

const standardGravity = 9.80665;
const lapseRate = 0.0065;
const seaLevelPressure = 101325;

/** a Rd / g with the molar gas constant of 2018 and 28.96546 g/mol of dry air. */
const altimeterExponent = (lapseRate * (8.314462618 / 28.96546e-3)) / standardGravity;

/**
 * Station pressure in Pa from an altimeter setting in Pa and the elevation of the place in m.
 * `undefined` for a setting that is not positive and an elevation above which the formula leaves no air (about
 * 44 km).
 * Source: Smithsonian Meteorological Tables, 6th edition (1951), page 269 (with T0 = 288 K and its 0.3 hPa).
 */
export function stationPressure(altimeter: number, elevation: number): number | undefined {
  const n = altimeterExponent;
  const reduced = altimeter ** n - (seaLevelPressure ** n * lapseRate * elevation) / 288;
  return altimeter > 0 && reduced > 0 ? reduced ** (1 / n) + 30 : undefined;
}

/**
 * Pressure in Pa of the standard atmosphere at an elevation in m above sea level, from -5000 to 11000 m;
 * `undefined` outside. Geometric height is taken for geopotential height, 0.03 % of pressure at 2000 m.
 * Source: U.S. Standard Atmosphere 1976, equation 33a (equal to ISO 2533 there).
 */
export function standardPressure(elevation: number): number | undefined {
  if (!(elevation >= -5000 && elevation <= 11000)) return undefined;
  const temperature = 288.15 - lapseRate * elevation;
  return seaLevelPressure * (temperature / 288.15) ** (standardGravity / (dryAirGasConstant * lapseRate));
}
