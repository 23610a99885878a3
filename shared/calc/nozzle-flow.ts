// Air speeds up and thins out on its way through a valve: the isentropic law that effective area is defined by.

import { dryAirGasConstant, dryAirHeatRatio } from "./dry-air.ts";

/**
 * Pressure ratio, downstream static over upstream stagnation, at and below which the flow is sonic.
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals (1988), Appendix C.
 */
export function criticalRatio(gamma = dryAirHeatRatio): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

const DRY_AIR_CRITICAL = criticalRatio();

/**
 * Flow function psi of a pressure ratio `r` from 0 to 1, dimensionless: 0 at r = 1, constant from the critical
 * ratio down. `undefined` outside 0 to 1.
 * Source: Heywood (1988), equations C.8 and C.9, written by the temperature ratio; equal to C_f of 40 CFR 1065.640 for an
 * approach ratio of zero.
 */
export function flowFunction(r: number, gamma = dryAirHeatRatio): number | undefined {
  if (!(r >= 0 && r <= 1)) return undefined;
  const ratio = Math.max(r, gamma === dryAirHeatRatio ? DRY_AIR_CRITICAL : criticalRatio(gamma));
  // How much warmer the air is at rest, T0/T - 1: the pressure ratio to the power (1 - gamma)/gamma, less one. To take one
  // off a power would cost the digits of a small pressure difference.
  const warmer = Math.expm1(((gamma - 1) / gamma) * Math.log(1 / ratio));
  return ratio * Math.sqrt(((2 * gamma) / (gamma - 1)) * warmer * (1 + warmer));
}

/**
 * Mass flux in kg/(s m2) through an ideal nozzle from rest at `p0` Pa and `rho0` kg/m3 to the pressure `r` p0.
 * `undefined` outside r = 0 to 1 and for a pressure or density that is not positive.
 * Source: Heywood (1988), equations C.8 and C.9, with p0 / (R T0) written as rho0.
 */
export function massFlux(p0: number, rho0: number, r: number): number | undefined {
  const psi = flowFunction(r);
  return psi !== undefined && p0 > 0 && rho0 > 0 ? Math.sqrt(p0 * rho0) * psi : undefined;
}

/**
 * Effective area in m2: that of the ideal nozzle which would pass `massFlow` kg/s at a mass flux. `undefined` where the
 * flux is, or is zero (no pressure difference).
 * Source: Heywood (1988), section 6.3.2.
 */
export function effectiveArea(massFlow: number, flux: number | undefined): number | undefined {
  return flux !== undefined && flux > 0 ? massFlow / flux : undefined;
}

/**
 * Speed of sound in m/s in dry air of a temperature in K, above 0.
 * Source: U.S. Standard Atmosphere 1976, equation 50.
 */
export function speedOfSound(temperature: number): number {
  return Math.sqrt(dryAirHeatRatio * dryAirGasConstant * temperature);
}
