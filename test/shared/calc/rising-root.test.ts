import fc from "fast-check";
import { expect, test } from "vitest";
import { risingRoot } from "../../../shared/calc/rising-root.ts";
import { checkClose } from "./close.ts";

const root = fc.double({ min: 0.01, max: 99, noNaN: true });

test("finds the root of functions that rise evenly, steeply and slowly", () => {
  fc.assert(
    fc.property(root, (x0) => {
      checkClose(
        risingRoot((x) => x - x0, 0, 100, 1e-12),
        x0,
        1e-10,
      );
      checkClose(
        risingRoot((x) => x ** 5 - x0 ** 5, 0, 100, 1e-12),
        x0,
        1e-10,
      );
      checkClose(
        risingRoot((x) => Math.log(x / x0), 0.001, 100, 1e-12),
        x0,
        1e-10,
      );
      checkClose(
        risingRoot((x) => Math.tanh(x - x0), 0, 100, 1e-12),
        x0,
        1e-10,
      );
    }),
  );
});

test("needs few steps", () => {
  let steps = 0;
  risingRoot(
    (x) => {
      steps += 1;
      return x ** 3 - 20;
    },
    0,
    10,
    1e-12,
  );
  expect(steps).toBeLessThan(25);
});

test("gives the nearer end where there is no root between", () => {
  expect(risingRoot((x) => x - 5, 6, 9, 1e-9)).toBe(6);
  expect(risingRoot((x) => x - 5, 1, 4, 1e-9)).toBe(4);
});
