// Lift on the size of the valve: what lets ports of different size be set against each other.
import type { PointCalculation } from "./point-calculation.ts";

export const liftRatio: PointCalculation = {
  id: "liftRatio",
  title: "L/D",
  dimension: "none",
  gives: "value",
  inTable: true,
  doc: "Lift over the diameter of the valve head; missing where the port does not state its valve.",
  source: "L/D: Heywood (1988), section 6.3.2",
  compute: ({ result: { lift }, setup: { port } }) => {
    const head = port?.valve?.value;
    return lift === undefined || head === undefined || !(head > 0) ? undefined : lift / head;
  },
};
