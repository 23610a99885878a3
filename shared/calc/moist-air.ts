// Density of the air that enters a port: every conversion between volume, mass and depression rests on it.

/** Air at rest: `temperature` in K, absolute `pressure` in Pa, relative `humidity` from 0 (dry) to 1. */
export interface MoistAir {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
}

const celsiusZero = 273.15;

/** Molar gas constant that belongs to the CIPM-2007 equation, J/(mol K) (CODATA 2006). */
const molarGasConstant = 8.314472;

/** Molar mass of water and of dry air with a carbon dioxide fraction of 0.0004, kg/mol. */
const molarMassOfWater = 18.01528e-3;
const molarMassOfDryAir = 28.96546e-3;

/**
 * Saturation vapour pressure over water in Pa at a temperature in K, for 15 to 27 degC (usable with less
 * accuracy from 0 to 60 degC).
 * Source: CIPM-2007 (Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155), equation A1.1.
 */
export function saturationPressure(temperature: number): number {
  return Math.exp(
    1.2378847e-5 * temperature ** 2 - 1.9121316e-2 * temperature + 33.93711047 - 6.3431645e3 / temperature,
  );
}

/**
 * Enhancement factor: how much more vapour saturated air of a temperature in K and a pressure in Pa holds than
 * pure vapour would. Dimensionless, about 1.004.
 * Source: CIPM-2007, equation A1.2.
 */
export function enhancementFactor(temperature: number, pressure: number): number {
  return 1.00062 + 3.14e-8 * pressure + 5.6e-7 * (temperature - celsiusZero) ** 2;
}

/**
 * Mole fraction of water vapour, 0 to 1. It stays the same when air is warmed, throttled or compressed without
 * condensing, which relative humidity does not.
 * Source: CIPM-2007, section A1.1: x = h f p_sv / p.
 */
export function waterMoleFraction(air: MoistAir): number {
  const { temperature, pressure, humidity } = air;
  return (humidity * enhancementFactor(temperature, pressure) * saturationPressure(temperature)) / pressure;
}

/** Compressibility factor of air with a mole fraction `water` of vapour: CIPM-2007, equation A1.4. */
function compressibility(temperature: number, pressure: number, water: number): number {
  const t = temperature - celsiusZero;
  const ratio = pressure / temperature;
  const first =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t ** 2 +
    (5.707e-6 - 2.051e-8 * t) * water +
    (1.9898e-4 - 2.376e-6 * t) * water ** 2;
  const second = 1.83e-11 - 0.765e-8 * water ** 2;
  return 1 - ratio * first + ratio ** 2 * second;
}

/**
 * Density of moist air in kg/m3.
 *
 * The equation is stated for 600 to 1100 hPa and 15 to 27 degC, where its own relative uncertainty is 22e-6; a
 * workshop from 0 to 40 degC loses no more than about 1e-4. Temperature and pressure must be above zero; the
 * carbon dioxide fraction is taken as 0.0004.
 *
 * Source: CIPM-2007 (Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155), equations 1 and 2.
 */
export function airDensity(air: MoistAir): number {
  const { temperature, pressure } = air;
  const water = waterMoleFraction(air);
  const z = compressibility(temperature, pressure, water);
  const ofDryAir = (pressure * molarMassOfDryAir) / (z * molarGasConstant * temperature);
  return ofDryAir * (1 - water * (1 - molarMassOfWater / molarMassOfDryAir));
}
