// The pressures on both sides of the port, which depend on the way the air goes.
//
// Drawing, the room's air enters the port and leaves it at a pressure lower by the depression; blowing, it enters compressed
// by the depression at the room's temperature and leaves into the room. (Definition of the test; ideal gas.)
import type { Direction } from "../model/model.ts";
import type { AirState } from "../model/setup.ts";

/** Stagnation pressure before the port, Pa. */
export function pressureBefore(direction: Direction, { pressure }: AirState, depression: number): number {
  return direction === "draws" ? pressure : pressure + depression;
}

/** Stagnation density before the port, kg/m3. */
export function densityBefore(direction: Direction, air: AirState, depression: number): number {
  return direction === "draws" ? air.density : (air.density * (air.pressure + depression)) / air.pressure;
}

/** Pressure behind the port over the stagnation pressure before it. */
export function pressureRatio(direction: Direction, { pressure }: AirState, depression: number): number {
  return direction === "draws" ? (pressure - depression) / pressure : pressure / (pressure + depression);
}
