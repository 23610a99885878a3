// The coefficient of an orifice or nozzle depends on its Reynolds number, and that on the viscosity of air.

/**
 * Dynamic viscosity of air in Pa s at a temperature in K, by Sutherland's formula; within 2 % from 170 to
 * 1900 K.
 * Source: 40 CFR 1065.640, equation for dynamic viscosity with Table 4 (air).
 */
export function airViscosity(temperature: number): number {
  return 1.716e-5 * (temperature / 273) ** 1.5 * ((273 + 111) / (temperature + 111));
}
