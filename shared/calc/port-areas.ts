// The areas of a port that effective area and speed are set against, one row each.
import type { Port } from "../model/model.ts";
import { curtainArea, gapAreaOf, headArea, liftWhereGapReachesThroat, throatArea } from "./valve-geometry.ts";

/** A named area of a port: m2 for all its valves together, by lift in m; `undefined` where the port does not say enough. */
export interface PortArea {
  readonly name: "curtain" | "gap" | "throat" | "head";
  readonly area: (port: Port, lift: number) => number | undefined;
  /** What must be stated for it. */
  readonly needs: readonly (keyof Port)[];
  readonly doc: string;
}

export const PORT_AREAS: readonly PortArea[] = [
  {
    name: "curtain",
    area: (port, lift) => times(port, port.valve && curtainArea(port.valve.value, lift)),
    needs: ["valve"],
    doc: "Cylinder between valve head and seat: pi D L.",
  },
  {
    name: "gap",
    area: (port, lift) => times(port, gapOf(port)(lift)),
    needs: ["valve", "seat", "throat", "stem"],
    doc: "Least geometric area on the way through seat and throat.",
  },
  {
    name: "throat",
    area: (port) => times(port, port.throat && port.stem && throatArea(port.throat.value, port.stem.value)),
    needs: ["throat", "stem"],
    doc: "Throat less the stem.",
  },
  {
    name: "head",
    area: (port) => times(port, port.valve && headArea(port.valve.value)),
    needs: ["valve"],
    doc: "Disc of the valve head: pi D^2/4; the trade's flow coefficient is on it.",
  },
];

/** One of the areas at a lift. */
export function portArea(name: PortArea["name"], port: Port, lift: number): number | undefined {
  return BY_NAME.get(name)?.area(port, lift);
}

const BY_NAME: ReadonlyMap<string, PortArea> = new Map(PORT_AREAS.map((entry) => [entry.name, entry]));

/** By port, since all readings of a port are set against its one gap. */
const gaps = new WeakMap<Port, (lift: number) => number | undefined>();

function gapOf(port: Port): (lift: number) => number | undefined {
  const before = gaps.get(port);
  if (before !== undefined) return before;
  const valve = valveOf(port);
  const gap = valve === undefined ? () => undefined : gapAreaOf(valve);
  gaps.set(port, gap);
  return gap;
}

/** Lift in m from which the throat is smaller than the gap under the valve. */
function liftOfThroat(port: Port): number | undefined {
  const valve = valveOf(port);
  return valve && liftWhereGapReachesThroat(valve);
}

/** Lift over valve diameter at which the curtain is as large as the disc of the valve: pi D L = pi D^2/4. */
const CURTAIN_IS_DISC = 0.25;

/** Where more lift stops opening a port, and which geometry says so. */
export interface FlattenLift {
  /** m */
  readonly lift: number;
  readonly from: "throat" | "disc";
}

/**
 * Lift from which a curve must flatten because the gap under the valve is no longer the smallest area: where it reaches
 * the throat's, or L/D 0.25 where the port does not say enough for that; `undefined` without a valve.
 */
export function liftToFlatten(port: Port): FlattenLift | undefined {
  const lift = liftOfThroat(port);
  if (lift !== undefined) return { lift, from: "throat" };
  return port.valve && { lift: CURTAIN_IS_DISC * port.valve.value, from: "disc" };
}

/** The seat's face width is stated; the formulas take its projection on the plane across the stem. */
function valveOf({ valve, seat, throat, stem }: Port) {
  if (valve === undefined || seat?.width === undefined || throat === undefined || stem === undefined)
    return undefined;
  const seatAngle = seat.angle.value;
  const seatWidthProjected = seat.width.value * Math.cos(seatAngle);
  return { head: valve.value, seatAngle, seatWidthProjected, throat: throat.value, stem: stem.value };
}

function times(port: Port, area: number | undefined): number | undefined {
  if (area === undefined || !(area > 0) || !Number.isFinite(area)) return undefined;
  return area * (port.valves ?? 1);
}
