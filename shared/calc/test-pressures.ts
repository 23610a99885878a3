// The pressures on both sides of the port, which depend on the way the air goes.
import type { Direction } from "../model/model.ts";
import type { AirState } from "../model/setup.ts";

/** Stagnation pressure (Pa) and density (kg/m3) before the port, and the pressure ratio over it. */
export interface TestPressures {
  readonly p0: number;
  readonly rho0: number;
  readonly ratio: number;
}

/**
 * Drawing, the room's air enters the port and leaves it at a pressure lower by the depression; blowing, it enters
 * compressed by the depression at the room's temperature and leaves into the room. (Definition of the test; ideal gas.)
 */
export function testPressures(direction: Direction, air: AirState, depression: number): TestPressures {
  if (direction === "draws") {
    return { p0: air.pressure, rho0: air.density, ratio: (air.pressure - depression) / air.pressure };
  }
  const p0 = air.pressure + depression;
  return { p0, rho0: (air.density * p0) / air.pressure, ratio: air.pressure / p0 };
}
