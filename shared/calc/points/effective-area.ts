// The one number of a reading that depends on neither depression nor air.
import type { PointCalculation } from "./point-calculation.ts";

export const effectiveArea: PointCalculation = {
  id: "effectiveArea",
  title: "effective area",
  dimension: "area",
  gives: "value",
  inTable: false,
  doc: "Area of the ideal nozzle that would pass the same mass of the same air at the same depression.",
  source: "m/(sqrt(p0 rho0) psi(r)): Heywood (1988), section 6.3.2, equations C.8 and C.9",
  compute: ({ result }) => result.effectiveArea,
};
