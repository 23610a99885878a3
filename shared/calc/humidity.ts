// Shops read a dew point or a wet bulb more often than a humidity: both become relative humidity here.

const celsiusZero = 273.15;

/** The psychrometer coefficient of an aspirated thermometer, 1/K, and its change with the wet bulb, 1/K. */
const psychrometerCoefficient = 6.53e-4;
const psychrometerSlope = 0.000944;

/**
 * Saturation vapour pressure over water in Pa at a temperature in K, for -45 to 60 degC: the form that belongs
 * to dew point and wet bulb (0.3 % below the one in the density equation, which a ratio does not show).
 * Source: WMO-No. 8, Guide to Instruments and Methods of Observation, Annex 4.B (Magnus form).
 */
export function magnusPressure(temperature: number): number {
  const t = temperature - celsiusZero;
  return 611.2 * Math.exp((17.62 * t) / (243.12 + t));
}

function asHumidity(vapourPressure: number, temperature: number): number | undefined {
  const humidity = vapourPressure / magnusPressure(temperature);
  return humidity >= 0 && humidity <= 1 ? humidity : undefined;
}

/**
 * Relative humidity, 0 to 1, from dew point and air temperature in K. The enhancement factor cancels in the
 * ratio to better than 1e-4. `undefined` for a dew point above the temperature.
 * Source: WMO-No. 8, Annex 4.B: U = e_w(t_d) / e_w(t).
 */
export function humidityFromDewPoint(dewPoint: number, temperature: number): number | undefined {
  return asHumidity(magnusPressure(dewPoint), temperature);
}

/**
 * Dew point in K from relative humidity (above 0, at most 1) and air temperature in K; the inverse of
 * `humidityFromDewPoint`. `undefined` for dry air, which has none, and for a humidity above 1.
 * Source: WMO-No. 8, Annex 4.B, solved for the temperature.
 */
export function dewPointFromHumidity(humidity: number, temperature: number): number | undefined {
  if (!(humidity > 0 && humidity <= 1)) return undefined;
  const x = Math.log((humidity * magnusPressure(temperature)) / 611.2);
  return (243.12 * x) / (17.62 - x) + celsiusZero;
}

/**
 * Relative humidity, 0 to 1, from an aspirated or sling psychrometer: wet bulb and air temperature in K,
 * station pressure in Pa.
 *
 * `undefined` for a wet bulb above the temperature, for one so low that no vapour would be left, and below
 * 0 degC, where the reading depends on whether the wick is frozen. The thermodynamic wet bulb of a psychrometric
 * chart is another idea and differs by up to 0.005.
 *
 * Source: WMO-No. 8, Annex 4.B: e = e_w(t_w) - 6.53e-4 (1 + 0.000944 t_w) p (t - t_w).
 */
export function humidityFromWetBulb(
  wetBulb: number,
  temperature: number,
  pressure: number,
): number | undefined {
  if (wetBulb < celsiusZero || wetBulb > temperature) return undefined;
  const coefficient = psychrometerCoefficient * (1 + psychrometerSlope * (wetBulb - celsiusZero));
  const vapourPressure = magnusPressure(wetBulb) - coefficient * pressure * (temperature - wetBulb);
  return asHumidity(vapourPressure, temperature);
}
