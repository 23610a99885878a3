// The ideal nozzle that a port is measured by: what it passes depends on the way the air goes.
import type { Direction } from "../model/model.ts";
import type { AirState } from "../model/setup.ts";
import { massFlux } from "./nozzle-flow.ts";

/**
 * Mass flux in kg/(s m2) through an ideal nozzle in the port's place; `undefined` where there is none (see `massFlux`).
 * Drawing, the room's air enters it and leaves it at a pressure lower by the depression; blowing, it enters compressed by the
 * depression at the room's temperature and leaves into the room. (Definition of the test; ideal gas.)
 */
export function testFlux(
  direction: Direction,
  { pressure, density }: AirState,
  depression: number,
): number | undefined {
  if (direction === "draws") return massFlux(pressure, density, (pressure - depression) / pressure);
  const compressed = pressure + depression;
  return massFlux(compressed, (density * compressed) / pressure, pressure / compressed);
}
