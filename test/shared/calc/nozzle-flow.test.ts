import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  criticalRatio,
  effectiveArea,
  flowFunction,
  massFlux,
  speedOfSound,
} from "../../../shared/calc/nozzle-flow.ts";
import { checkClose } from "./close.ts";

const pascalPerInchOfWater = 249.08891;
const depression = 28 * pascalPerInchOfWater;
const atmosphere = 101325;

/** Ideal-gas density with the gas constant that the published example values were computed with. */
function density(pressure: number, temperature: number): number {
  return pressure / (287.05 * temperature);
}

const ratio = fc.double({ min: 0, max: 1, noNaN: true });

describe("flow function", () => {
  test("chokes at 0.5282817877 with 0.6847314564 (closed form; tables of NACA Report 1135 print .5283)", () => {
    checkClose(criticalRatio(), 0.5282817877, 1e-9);
    checkClose(flowFunction(0.3), 0.6847314564, 1e-9);
  });

  test("has the critical ratios of burnt gas (closed form, computed apart)", () => {
    checkClose(criticalRatio(1.35), 0.5368512, 1e-7);
    checkClose(criticalRatio(1.3), 0.5457277, 1e-7);
  });

  test("is the C_f of 40 CFR 1065.640 Table 2 at an approach ratio of zero, printed", () => {
    checkClose(flowFunction(0, 1.399), 0.6846, 8e-5);
    checkClose(flowFunction(0, 1.385), 0.6822, 8e-5);
  });

  test("gives A/A* 1.3398 at Mach 0.5 (table of NACA Report 1135, printed)", () => {
    checkClose((flowFunction(0) ?? 0) / (flowFunction(0.84301918) ?? 0), 1.3398, 6e-5);
  });

  test("at 10 and 28 inH2O (isentropic, confirmed with the Python package fluids)", () => {
    const at10 = flowFunction(1 - (10 * pascalPerInchOfWater) / atmosphere) ?? 0;
    const at28 = flowFunction(1 - depression / atmosphere) ?? 0;
    checkClose(at10, 0.2187952, 1e-6);
    checkClose(at28, 0.3570905, 1e-6);
    checkClose(at28 / at10, 1.6320765, 1e-6);
  });

  test.each([
    [2 ** -10, 0.0441710472165384],
    [2 ** -20, 0.00138106722642139],
    [2 ** -33, 1.52587890615484e-5],
    [2 ** -40, 1.34869915234795e-6],
  ])(
    "keeps its digits at a pressure difference of %d (the formula in 40 digits, Python package mpmath)",
    (drop, psi) => {
      checkClose(flowFunction(1 - drop), psi, 1e-9);
    },
  );

  test("is the incompressible law for a small pressure difference", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e-4, noNaN: true }), (drop) => {
        checkClose(flowFunction(1 - drop), Math.sqrt(2 * drop), 1e-4);
      }),
    );
  });

  test("never rises with the ratio, and is constant below the critical one", () => {
    fc.assert(
      fc.property(ratio, ratio, (a, b) => {
        const [low, high] = [flowFunction(Math.min(a, b)) ?? 0, flowFunction(Math.max(a, b)) ?? 0];
        expect(high).toBeLessThanOrEqual(low + 1e-15);
        if (Math.max(a, b) <= criticalRatio()) expect(high).toBe(low);
      }),
    );
  });

  test("is zero without a pressure difference and nothing outside 0 to 1", () => {
    expect(flowFunction(1)).toBe(0);
    expect(flowFunction(1.01)).toBeUndefined();
    expect(flowFunction(-0.01)).toBeUndefined();
    expect(flowFunction(Number.NaN)).toBeUndefined();
  });
});

describe("mass flux at 28 inH2O", () => {
  test.each([
    [288.15, 125.80758757],
    [293.15, 124.73007896],
  ])("drawing air of %d K is %d kg/(s m2) (closed form, computed apart)", (temperature, expected) => {
    const r = (atmosphere - depression) / atmosphere;
    checkClose(massFlux(atmosphere, density(atmosphere, temperature), r), expected, 1e-9);
  });

  test("blowing air of 293.15 K is 3.65 % more (closed form, computed apart)", () => {
    const p0 = atmosphere + depression;
    const blowing = massFlux(p0, density(p0, 293.15), atmosphere / p0);
    checkClose(blowing, 129.28152903, 1e-9);
    checkClose((blowing ?? 0) / 124.73007896, 1.0364904, 1e-7);
  });

  test("is not computed without pressure or density", () => {
    expect(massFlux(0, 1.2, 0.9)).toBeUndefined();
    expect(massFlux(atmosphere, 0, 0.9)).toBeUndefined();
  });
});

describe("effective area", () => {
  test("of 250 cfm at 28 inH2O is 1139.02 mm2 (closed form, computed apart)", () => {
    const rho = density(atmosphere, 293.15);
    const massFlow = 250 * 4.719474432e-4 * rho;
    const r = 1 - depression / atmosphere;
    checkClose(effectiveArea(massFlow, massFlux(atmosphere, rho, r)), 1139.02068661e-6, 1e-9);
  });

  test("passes the mass flow it was computed from", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (massFlow, r) => {
          const flux = massFlux(atmosphere, 1.2, r) ?? 0;
          checkClose((effectiveArea(massFlow, flux) ?? 0) * flux, massFlow, 1e-12);
        },
      ),
    );
  });

  test("is not computed without a pressure difference", () => {
    expect(effectiveArea(0.1, massFlux(atmosphere, 1.2, 1))).toBeUndefined();
  });
});

test("speed of sound is 340.29 m/s at 288.15 K (U.S. Standard Atmosphere 1976, printed)", () => {
  checkClose(speedOfSound(288.15), 340.29, 2e-5);
  checkClose(speedOfSound(293.15), 343.2337, 1e-6); // computed apart
});
