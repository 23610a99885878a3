// The result that a porter quotes: flow at the quoted depression and in the reference air.
import type { PointCalculation } from "./point-calculation.ts";

export const correctedFlow: PointCalculation = {
  id: "correctedFlow",
  title: "corrected flow",
  dimension: "flow",
  gives: "value",
  inTable: true,
  doc: "Flow through the port at the quoted depression and, where one is named, in the reference air.",
  source: "Q sqrt(quote/dp) sqrt(rho/rho_ref): Bernoulli's equation for one port at one depression",
  compute: ({ result }) => result.flow?.corrected,
};
