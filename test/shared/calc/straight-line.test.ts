import { expect, test } from "vitest";
import { straightLine } from "../../../shared/calc/straight-line.ts";
import { checkClose } from "./close.ts";

/** NIST Statistical Reference Datasets, linear regression, Norris: calibration of ozone monitors. */
const NORRIS =
  `0.1 0.2 338.8 337.4 118.1 118.2 888.0 884.6 9.2 10.1 228.1 226.5 668.5 666.3 998.5 996.3 449.1 448.6
778.9 777.0 559.2 558.2 0.3 0.4 0.1 0.6 778.1 775.5 668.8 666.9 339.3 338.0 448.9 447.5 10.8 11.6 557.7 556.0 228.3 228.1
998.0 995.8 888.8 887.6 119.6 120.2 0.3 0.3 0.6 0.3 557.6 556.8 339.3 339.1 888.0 887.2 998.5 999.0 778.9 779.0 10.2 11.1
117.6 118.3 228.9 229.2 668.4 669.1 449.2 448.9 0.2 0.5`
    .split(/\s+/)
    .map(Number);

test("the line through Norris has the certified slope, deviations and degrees of freedom", () => {
  const points = NORRIS.flatMap((y, index) => (index % 2 === 0 ? [{ x: NORRIS[index + 1] ?? 0, y }] : []));
  expect(points).toHaveLength(36);
  const line = straightLine(points);
  checkClose(line?.slope, 1.00211681802045, 1e-12);
  checkClose((line?.mean ?? 0) - (line?.slope ?? 0) * (line?.centre ?? 0), -0.262323073774029, 1e-9);
  checkClose(line?.slopeUncertainty, 0.000429796848199937, 1e-9);
  checkClose(line?.deviation, 0.884796396144373, 1e-9);
  expect(line?.degreesOfFreedom).toBe(34);
});

test("there is none through two points, nor through points of one place", () => {
  expect(
    straightLine([
      { x: 0, y: 0 },
      { x: 1, y: 1 },
    ]),
  ).toBeUndefined();
  expect(straightLine([1, 2, 3].map((y) => ({ x: 5, y })))).toBeUndefined();
});
