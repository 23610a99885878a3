// What an engine breathes is mass; this is that of the reading itself.
import type { PointCalculation } from "./point-calculation.ts";

export const massFlow: PointCalculation = {
  id: "massFlow",
  title: "mass flow",
  dimension: "mass-flow",
  gives: "value",
  inTable: false,
  doc: "Mass of air through the port at the reading's own depression, in the air of the day.",
  source: "m = rho Q: conservation of mass, with the density by CIPM-2007 (Metrologia 45 (2008) 149)",
  compute: ({ result }) => result.massFlow,
};
