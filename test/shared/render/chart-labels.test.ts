import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxesAlong, overlap, placeLabels, spreadLabels } from "../../../shared/render/chart-labels.ts";

const pixel = fc.integer({ min: -50, max: 450 });
const size = fc.integer({ min: 1, max: 120 });
const box = fc.record({ left: pixel, top: pixel, width: size, height: size });
const FRAME = { left: 0, top: 0, width: 400, height: 300 };

function wish(width: number, height: number, ...corners: [number, number][]) {
  return { width, height, corners };
}

describe("placeLabels", () => {
  test("takes the corner with the fewest obstacles under it", () => {
    const obstacles = [0, 5, 100].map((top) => ({ left: 0, top, width: 100, height: 5 }));
    const [label] = placeLabels([wish(10, 10, [20, 0], [20, 98])], obstacles, [], FRAME);
    expect(label).toMatchObject({ left: 20, top: 98 });
  });

  test("takes the first free corner, and one on an obstacle rather than none", () => {
    const obstacle = { left: 0, top: 0, width: 100, height: 100 };
    const [free, onObstacle, nowhere] = placeLabels(
      [wish(10, 10, [50, 50], [150, 50]), wish(10, 10, [20, 20]), wish(10, 10, [150, 55])],
      [obstacle],
      [],
      FRAME,
    );
    expect(free).toMatchObject({ left: 150, top: 50 });
    expect(onObstacle).toMatchObject({ left: 20, top: 20 });
    expect(nowhere).toBeUndefined();
  });

  test("never puts one label on another, on what is kept, nor out of the frame", () => {
    const corners = fc.array(fc.tuple(pixel, pixel), { maxLength: 6 });
    const wishes = fc.array(fc.record({ width: size, height: size, corners }), { maxLength: 12 });
    fc.assert(
      fc.property(wishes, fc.array(box, { maxLength: 6 }), (all, obstacles) => {
        const placed = placeLabels(all, [], obstacles, FRAME).filter((label) => label !== undefined);
        placed.forEach((a, at) => {
          expect(a.left).toBeGreaterThanOrEqual(0);
          expect(a.top).toBeGreaterThanOrEqual(0);
          expect(a.left + a.width).toBeLessThanOrEqual(400);
          expect(a.top + a.height).toBeLessThanOrEqual(300);
          for (const b of placed.slice(at + 1)) expect(overlap(a, b)).toBe(false);
          for (const point of obstacles) expect(overlap(a, point)).toBe(false);
        });
      }),
    );
  });
});

test("a label without room takes its shorter form", () => {
  const long = { ...wish(200, 10, [250, 0]), instead: wish(50, 10, [250, 0]) };
  expect(placeLabels([long], [], [], FRAME)).toEqual([{ left: 250, top: 0, width: 50, height: 10, form: 1 }]);
});

describe("spreadLabels", () => {
  const label = fc.record({
    middle: fc.integer({ min: -100, max: 400 }),
    height: fc.integer({ min: 1, max: 60 }),
  });

  test("leaves labels that have room where they should stand", () => {
    const labels = [
      { middle: 50, height: 10 },
      { middle: 20, height: 10 },
    ];
    expect(spreadLabels(labels, 0, 100)).toEqual([45, 15]);
  });

  test("moves two at one place apart to either side alike", () => {
    const labels = [
      { middle: 50, height: 10 },
      { middle: 50, height: 10 },
    ];
    expect(spreadLabels(labels, 0, 100)).toEqual([40, 50]);
  });

  test("gives up exactly where the labels do not fit", () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 10 }), (labels) => {
        const total = labels.reduce((sum, { height }) => sum + height, 0);
        expect(spreadLabels(labels, 0, 300) === undefined).toBe(total > 300);
      }),
    );
  });

  test("keeps labels apart, inside, and in the order of their places", () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 8 }), (labels) => {
        const tops = spreadLabels(labels, 0, 480) ?? [];
        const placed = labels.map((entry, at) => ({ ...entry, top: tops[at] ?? Number.NaN }));
        placed.sort((a, b) => a.top - b.top);
        placed.forEach((entry, at) => {
          const before = placed[at - 1];
          expect(entry.top).toBeGreaterThanOrEqual(-1e-9);
          expect(entry.top + entry.height).toBeLessThanOrEqual(480 + 1e-9);
          if (before === undefined) return;
          expect(entry.top).toBeGreaterThanOrEqual(before.top + before.height - 1e-9);
          expect(entry.middle).toBeGreaterThanOrEqual(before.middle);
        });
      }),
    );
  });
});

describe("boxesAlong", () => {
  test("covers every point of the line", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(pixel, pixel, pixel, pixel, share, (x1, y1, x2, y2, at) => {
        const [x, y] = [x1 + (x2 - x1) * at, y1 + (y2 - y1) * at];
        const boxes = boxesAlong(x1, y1, x2, y2);
        const covers = boxes.some(
          ({ left, top, width, height }) => x >= left && x <= left + width && y >= top && y <= top + height,
        );
        expect(covers).toBe(true);
      }),
    );
  });
});
