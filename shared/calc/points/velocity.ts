// How fast the air is on average at the places of a port that matter.
import { portArea } from "../port-areas.ts";
import type { PointCalculation } from "./point-calculation.ts";

/**
 * By name of the section, m/s. A section that the port states as `curtain` or `throat` takes the place of the computed
 * one: what was measured goes before what follows from the valve.
 */
export const velocity: PointCalculation = {
  id: "velocity",
  title: "velocity",
  dimension: "speed",
  gives: "record",
  inTable: (name, { port }) => port?.sections.some((section) => section.name === name) ?? false,
  doc: "Mean speed of the air at each stated section and through curtain and throat, at the reading's own depression.",
  source: "Q/A: continuity, incompressible",
  compute: ({ result: { flow, lift }, setup: { port } }) => {
    const through = (area: number | undefined) =>
      flow !== undefined && area !== undefined && area > 0 ? flow.port / area : undefined;
    const areaOf = (name: "curtain" | "throat") =>
      port === undefined || lift === undefined ? undefined : portArea(name, port, lift);
    return Object.fromEntries([
      ["curtain", through(areaOf("curtain"))],
      ["throat", through(areaOf("throat"))],
      ...(port?.sections ?? []).map(({ name, area }) => [name, through(area.value)] as const),
    ]);
  },
};
