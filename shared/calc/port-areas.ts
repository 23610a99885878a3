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
    area: (port, lift) => areasOf(port).curtain(lift),
    needs: ["valve"],
    doc: "Cylinder between valve head and seat: pi D L.",
  },
  {
    name: "gap",
    area: (port, lift) => areasOf(port).gap(lift),
    needs: ["valve", "seat", "throat", "stem"],
    doc: "Least geometric area on the way through seat and throat.",
  },
  {
    name: "throat",
    area: (port) => areasOf(port).throat,
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

/** The areas of one port by lift, its dimensions looked at once for all its readings. */
class PortAreas {
  readonly throat: number | undefined;
  readonly #port: Port;
  readonly #gap: ((lift: number) => number | undefined) | undefined;

  constructor(port: Port) {
    const valve = valveOf(port);
    this.throat = times(port, port.throat && port.stem && throatArea(port.throat.value, port.stem.value));
    this.#port = port;
    this.#gap = valve && gapAreaOf(valve);
  }

  curtain(lift: number): number | undefined {
    const { valve } = this.#port;
    return times(this.#port, valve && curtainArea(valve.value, lift));
  }

  gap(lift: number): number | undefined {
    return times(this.#port, this.#gap?.(lift));
  }

  /** The gap area, or, where it is not known, the smaller of curtain and throat; infinite where nothing is known. */
  least(lift: number): number {
    return (
      this.gap(lift) ??
      Math.min(this.curtain(lift) ?? Number.POSITIVE_INFINITY, this.throat ?? Number.POSITIVE_INFINITY)
    );
  }

  /** Which of them the least is. */
  leastName(lift: number): "gap" | "curtain" | "throat" {
    if (this.gap(lift) !== undefined) return "gap";
    return this.curtain(lift) === this.least(lift) ? "curtain" : "throat";
  }
}

const known = new WeakMap<Port, PortAreas>();

/** The areas of a port. */
export function areasOf(port: Port): PortAreas {
  const before = known.get(port);
  if (before !== undefined) return before;
  const areas = new PortAreas(port);
  known.set(port, areas);
  return areas;
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
