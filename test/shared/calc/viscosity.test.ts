import fc from "fast-check";
import { expect, test } from "vitest";
import { airViscosity } from "../../../shared/calc/viscosity.ts";
import { checkClose } from "./close.ts";

test("viscosity at 298.15 K is 1.838e-5 Pa s (40 CFR 1065.640(d)(1), printed)", () => {
  checkClose(airViscosity(298.15), 1.838e-5, 1e-4);
});

test("viscosity at 293.15 K is 1.81424862e-5 Pa s (same formula, computed apart)", () => {
  checkClose(airViscosity(293.15), 1.81424862e-5, 1e-8);
});

test("Reynolds number of the example of 40 CFR 1065.640(d)(1) is 7.538e5, printed", () => {
  const massFlow = 57.625 * 28.7805e-3;
  checkClose((4 * massFlow) / (Math.PI * 0.1524 * airViscosity(298.15)), 7.538e5, 1e-4);
});

test("viscosity rises with temperature", () => {
  fc.assert(
    fc.property(fc.double({ min: 170, max: 1900, noNaN: true }), (temperature) => {
      expect(airViscosity(temperature + 0.1)).toBeGreaterThan(airViscosity(temperature));
    }),
  );
});
