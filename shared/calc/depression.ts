// Flow goes with the square root of depression: the trade's rule for quoting a reading at another one.

/**
 * Flow that would be read at the depression `to` if `flow` was read at `from` (both positive, in one unit), in
 * the unit of `flow`. The rule leaves out that air is compressible: it overstates a nozzle-like port by 2.5 %
 * from 10 to 28 inH2O. `undefined` for a depression that is not positive.
 * Source: Bernoulli's equation at constant density, Q = C A sqrt(2 dp / rho).
 */
export function scaleToDepression(flow: number, from: number, to: number): number | undefined {
  return from > 0 && to > 0 ? flow * Math.sqrt(to / from) : undefined;
}

/**
 * Leak at a depression, in the unit of `leak`, which was measured at `leakDepression` (both positive, in one
 * unit). The exponent lies between 0.5 (a hole) and 1 (a long fine gap). `undefined` for a depression that is
 * not positive.
 * Source: the power law of air leakage, ASTM E779.
 */
export function leakAt(
  leak: number,
  leakDepression: number,
  depression: number,
  exponent = 0.5,
): number | undefined {
  return leakDepression > 0 && depression > 0 ? leak * (depression / leakDepression) ** exponent : undefined;
}

/**
 * Velocity in m/s that a depression in Pa gives to air of a density in kg/m3 without loss and at constant
 * density. `undefined` for a negative depression and a density that is not positive.
 * Source: Bernoulli's equation, v = sqrt(2 dp / rho).
 */
export function theoreticalVelocity(depression: number, density: number): number | undefined {
  return depression >= 0 && density > 0 ? Math.sqrt((2 * depression) / density) : undefined;
}
