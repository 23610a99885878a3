// The constants of dry air as an ideal gas stand once, because several calculations must share them.

/** Specific gas constant of dry air, J/(kg K): U.S. Standard Atmosphere 1976, R* / M0 = 8.31432 / 0.0289644. */
export const dryAirGasConstant = 287.05287;

/** Ratio of the specific heats of dry air: U.S. Standard Atmosphere 1976, equation 50. */
export const dryAirHeatRatio = 1.4;
