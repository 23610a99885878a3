// What the discharge coefficients have in common: effective area over a named area of the port.
import { type PortArea, portArea } from "../port-areas.ts";
import type { PointCalculation } from "./point-calculation.ts";

/** The discharge coefficient on one of the port's areas; `undefined` where the port does not give that area. */
export function dischargeCoefficient(
  area: PortArea["name"],
  words: { readonly doc: string; readonly source: string },
): PointCalculation {
  return {
    id: `cd.${area}`,
    title: `Cd ${area}`,
    dimension: "none",
    gives: "value",
    inTable: true,
    ...words,
    compute: ({ result: { effectiveArea, lift }, setup: { port } }) => {
      if (effectiveArea === undefined || lift === undefined || port === undefined) return undefined;
      const geometric = portArea(area, port, lift);
      return geometric === undefined ? undefined : effectiveArea / geometric;
    },
  };
}
