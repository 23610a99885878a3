// How far a corrected flow can be trusted by itself.
import type { PointCalculation } from "./point-calculation.ts";

export const uncertainty: PointCalculation = {
  id: "uncertainty",
  title: "±U",
  dimension: "flow",
  gives: "value",
  inTable: true,
  doc: "Expanded uncertainty (k = 2) of the corrected flow of this one reading.",
  source: "U = 2 u_c: JCGM 100:2008 (GUM), 5.1.2 and 6.2.1",
  compute: ({ result: { flow, uncertainty: relative } }) =>
    flow === undefined || relative === undefined ? undefined : Math.abs(flow.corrected) * relative,
};
