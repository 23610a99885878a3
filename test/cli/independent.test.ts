// A whole record worked out a second time, by hand as it were: straight from what is published, with nothing of the
// product's own calculations. What the command prints must be the same.
import { describe, expect, test } from "vitest";
import { inShop } from "../kit/command.ts";

// --- units (NIST SP 811 B.8) --------------------------------------------------------------------------------

const INCH = 0.0254;
const CFM = 0.3048 ** 3 / 60;
/** Conventional: 1000 kg/m3 and 9.80665 m/s2. */
const IN_H2O = 249.08891;

// --- the record ---------------------------------------------------------------------------------------------

/** Corrected flows in L/s that stand to each other as the mean effective areas of the cam's table below. */
const AREAS = [55, 112, 170, 225, 275, 318, 352, 378, 396, 408, 415];

const RECORD = `headnote 1
bench north
  shows      flow
  repeat     0.35 %
  uncertainty 1.0 %
  within     0.2 inH2O
engine e1
  cam        c1
cam c1 "one lobe"
  side       exhaust
  lift       11 mm
  duration   260 deg
  law        harmonic
head h1
  engine     e1
port p1
  of         h1
  side       exhaust
  valve      40 mm
  seat       45 deg width 2.121320344 mm
  throat     35 mm
  stem       7 mm
session 2026-03-02
  bench      north
  port       p1
  target     28 inH2O
  air        22 degC 980.0 hPa 40 %RH
  leak       none
  entry      bare
  stub       none

run event
  lift[mm]  depression[inH2O]  flow[L/s]
${AREAS.map((area, at) => `  ${at + 1}.00  28.0  ${(area / 10).toFixed(1)}`).join("\n")}

run blown
  target     25 inH2O
  quote      28 inH2O
  reference  isa
  leak       4.0 cfm at 10 inH2O exponent 0.65
  lift[mm]  depression[inH2O]  flow[cfm]
  3.00      25.0               58.4
  4.00      25.0               76.2
  8.00      24.9               121.0
`;

interface Quantity {
  readonly si: number;
}
interface Point {
  readonly correctedFlow: Quantity;
  readonly massFlow: Quantity;
  readonly effectiveArea: Quantity;
  readonly liftRatio: number;
  readonly cd: Readonly<Record<"curtain" | "gap" | "throat" | "head", number>>;
  readonly uncertainty: Quantity;
}
interface Run {
  readonly air: { readonly density: Quantity };
  readonly points: readonly Point[];
  readonly summary: { readonly eventMean: Quantity; readonly mean: Quantity };
}

/** What the command prints of the record's runs. */
async function printed(): Promise<readonly [event: Run, blown: Run]> {
  let runs: readonly Run[] = [];
  await inShop({ "a.headnote": RECORD }, async (shop) => {
    const { code, out } = await shop.headnote(["table", "a.headnote", "--format", "json"]);
    expect(code).toBe(0);
    runs = JSON.parse(out).runs;
  });
  const [event, blown] = runs;
  if (event === undefined || blown === undefined) throw new Error("the record has two runs");
  return [event, blown];
}

function checkClose(actual: number | undefined, expected: number, relative: number): void {
  expect(Math.abs((actual ?? Number.NaN) / expected - 1), `${actual} for ${expected}`).toBeLessThanOrEqual(
    relative,
  );
}

// --- air: CIPM-2007 (Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149-155), 400 ppm of carbon dioxide -----

function density(celsius: number, pascal: number, humidity: number): number {
  const t = celsius + 273.15;
  const saturation = Math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t);
  const factor = 1.00062 + 3.14e-8 * pascal + 5.6e-7 * celsius * celsius;
  const water = (humidity * factor * saturation) / pascal;
  const first =
    1.58123e-6 -
    2.9331e-8 * celsius +
    1.1043e-10 * celsius ** 2 +
    (5.707e-6 - 2.051e-8 * celsius) * water +
    (1.9898e-4 - 2.376e-6 * celsius) * water ** 2;
  const ratio = pascal / t;
  const compressibility = 1 - ratio * first + ratio ** 2 * (1.83e-11 - 0.765e-8 * water ** 2);
  const dry = 28.96546e-3;
  return ((pascal * dry) / (compressibility * 8.314472 * t)) * (1 - water * (1 - 18.01528e-3 / dry));
}

test("the second calculation of the air has the printed value", () => {
  // S. V. Gupta, Mass Metrology, p. 205: 10 degC, 730 mmHg, 40 %.
  checkClose(density(10, 97325.33, 0.4), 1.19569, 1e-5);
});

// --- flow through the valve: Heywood (1988), appendix C; 40 CFR 1065.640 --------------------------------------

/** Mass flow over area, p0 and 1/sqrt(R T0), of a nozzle below the critical pressure ratio, for a ratio of heats of 1.4. */
function psi(ratio: number): number {
  return ratio ** (1 / 1.4) * Math.sqrt((2.8 / 0.4) * (1 - ratio ** (0.4 / 1.4)));
}

test("the second calculation of the nozzle has the printed value", () => {
  // Isentropic flow tables (NACA Report 1135): at M = 0.50 p/p0 0.8430, rho/rho0 0.8852, T/T0 0.9524.
  checkClose(psi(0.843), 0.8852 * 0.5 * Math.sqrt(1.4 * 0.9524), 2e-4);
});

// --- areas: Heywood (1988), equations 6.7 to 6.10 ---------------------------------------------------------------

const VALVE = { head: 40e-3, throat: 35e-3, stem: 7e-3, width: 1.5e-3, angle: Math.PI / 4 } as const;

function gap(lift: number): number {
  const { head, throat, stem, width, angle } = VALVE;
  const cone = width / (Math.sin(angle) * Math.cos(angle));
  if (lift <= cone) {
    return Math.PI * lift * Math.cos(angle) * (head - 2 * width + (lift / 2) * Math.sin(2 * angle));
  }
  const outer = Math.PI * (head - width) * Math.hypot(lift - width * Math.tan(angle), width);
  return Math.min(outer, (Math.PI / 4) * (throat ** 2 - stem ** 2));
}

test("the second calculation of the gap has values that a numerical search for the shortest way gives", () => {
  // Worked example of the 45 degree seat, mm2.
  checkClose(gap(3e-3), 256.57649e-6, 2e-8);
  checkClose(gap(4e-3), 352.63066e-6, 2e-8);
  checkClose(gap(8e-3), 806.84592e-6, 2e-8);
});

// --- what the command prints -------------------------------------------------------------------------------------

describe("a run that is blown through the port at 25 inH2O and quoted at 28 in standard air", () => {
  const lifts = [3e-3, 4e-3, 8e-3];
  const rho = density(22, 98000, 0.4);
  const standard = density(15, 101325, 0);
  const leakAt = (depression: number) => 4 * CFM * (depression / (10 * IN_H2O)) ** 0.65;
  const readings = [
    { depression: 25 * IN_H2O, flow: 58.4 * CFM },
    { depression: 25 * IN_H2O, flow: 76.2 * CFM },
    { depression: 24.9 * IN_H2O, flow: 121 * CFM },
  ];
  const through = readings.map(({ depression, flow }) => flow - leakAt(depression));
  const corrected = readings.map(
    ({ depression }, at) =>
      (through[at] ?? 0) * Math.sqrt((28 * IN_H2O) / depression) * Math.sqrt(rho / standard),
  );
  const effective = readings.map(({ depression }, at) => {
    const upstream = 98000 + depression;
    const dense = (rho * upstream) / 98000;
    return (rho * (through[at] ?? 0)) / (Math.sqrt(upstream * dense) * psi(98000 / upstream));
  });

  test("stands in air as dense as the equation says", async () => {
    const [, blown] = await printed();
    // Computed apart: 22 degC, 98000 Pa, 40 %.
    checkClose(rho, 1.1523869, 1e-7);
    checkClose(blown.air.density.si, rho, 1e-11);
  });

  test("has its corrected flow, the leak taken off at its own depression and law", async () => {
    const [, blown] = await printed();
    // 4 cfm at 10 inH2O are 7.8111092 cfm at 28 by the power 0.65.
    checkClose(leakAt(28 * IN_H2O) / CFM, 7.8111092, 1e-7);
    for (const [at, { correctedFlow }] of blown.points.entries()) {
      checkClose(correctedFlow.si, corrected[at] ?? 0, 1e-10);
    }
  });

  test("has its mass flow, and its effective area with the pressure upstream of the port", async () => {
    const [, blown] = await printed();
    for (const [at, { massFlow, effectiveArea }] of blown.points.entries()) {
      checkClose(massFlow.si, rho * (through[at] ?? 0), 1e-10);
      checkClose(effectiveArea.si, effective[at] ?? 0, 1e-10);
    }
  });

  test("has four coefficients, each on its area", async () => {
    const [, blown] = await printed();
    const throat = (Math.PI / 4) * (35e-3 ** 2 - 7e-3 ** 2);
    for (const [at, { cd, liftRatio }] of blown.points.entries()) {
      const [lift = 0, area = 0] = [lifts[at], effective[at]];
      checkClose(liftRatio, lift / 40e-3, 1e-11);
      checkClose(cd.curtain, area / (Math.PI * 40e-3 * lift), 1e-10);
      checkClose(cd.gap, area / gap(lift), 1e-8);
      checkClose(cd.throat, area / throat, 1e-10);
      checkClose(cd.head, area / ((Math.PI / 4) * 40e-3 ** 2), 1e-10);
    }
  });

  test("is as uncertain as its parts (JCGM 100:2008, 5.1.2)", async () => {
    const [, blown] = await printed();
    const digit = (step: number) => step / Math.sqrt(12);
    const change = (of: number) => (of - rho) / rho;
    const air = Math.hypot(
      change(density(22.3, 98000, 0.4)),
      change(density(22, 98050, 0.4)),
      change(density(22, 98000, 0.45)),
    );
    const [low = 0, middle = 0, high = 0] = corrected;
    const slope = (high - low) / (8e-3 - 3e-3);
    const { depression } = readings[1] ?? { depression: 0 };
    const port = through[1] ?? 0;
    // The leak goes with the depression of the row by the power 0.65, the flow with its root, the other way round.
    const byDepression = digit(0.1) * IN_H2O * (0.65 * (leakAt(depression) / port) + 0.5);
    const leak = (digit(0.1) / 4) * leakAt(depression);
    const u = Math.hypot(
      0.0035,
      byDepression / depression,
      (digit(0.1) * CFM) / port,
      leak / port,
      0.5 * air,
      (slope * 0.001 * INCH) / middle,
      0.01 / 2,
    );
    checkClose(blown.points[1]?.uncertainty.si, 2 * u * middle, 2e-4);
  });
});

describe("a run over the whole lift of its cam", () => {
  test("has the mean of the event, by crank angle and not by lift", async () => {
    const [event] = await printed();
    // Mean effective area of this table over a harmonic event of 11 mm: 248.74598 mm2, computed apart; here 1 mm2 is 0.1 L/s.
    checkClose(event.summary.eventMean.si, 24.874598e-3, 1e-6);
    // And once more: R. L. Norton, Cam Design and Manufacturing Handbook, simple harmonic rise and fall.
    const flows = [0, ...AREAS.map((area) => area / 1e4)];
    const at = (lift: number) => {
      const below = Math.min(10, Math.floor(lift));
      const [low = 0, high = 0] = flows.slice(below, below + 2);
      return low + (lift - below) * (high - low);
    };
    const steps = 20_000;
    const sum = Array.from({ length: steps }, (_, step) =>
      at(11 * ((1 - Math.cos((2 * Math.PI * (step + 0.5)) / steps)) / 2)),
    ).reduce((total, flow) => total + flow, 0);
    checkClose(event.summary.eventMean.si, sum / steps, 1e-6);
  });

  test("has the mean over lift by the trapezoid rule", async () => {
    const [event] = await printed();
    const inner = AREAS.slice(1, -1).reduce((sum, area) => sum + area, 0);
    checkClose(event.summary.mean.si, (inner + (55 + 415) / 2) / 10 / 1e4, 1e-11);
  });
});
