import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { velocityMapsOf } from "../../../server/analysis/velocity-maps.ts";
import { LABEL_SIZE } from "../../../shared/render/chart-layers.ts";
import { mapSpec } from "../../../shared/render/map-chart.ts";
import { dataOf, notesOf, panelsOf } from "../../kit/chart.ts";
import { open } from "../../kit/service.ts";

const HEAD = `headnote 1
session 2026-11-20
  air 20 degC 1013.25 hPa 0 %RH
run r
  lift[mm]  depression[kPa]  flow[L/s]
  10  7  100
map "at the neck" of r
  lift 10 mm
  depression 7 kPa
`;

function mapOf(lines: string) {
  const [map] = velocityMapsOf(open(HEAD + lines).analysis);
  if (map === undefined) throw new Error("one map");
  return map;
}

function speeds(values: readonly (number | string)[], unit = "velocity[m/s]") {
  const rows = values.map((value, at) => `  ${at * 10}  ${(at % 3) * 10}  ${value}\n`).join("");
  return mapOf(`  x[mm]  y[mm]  ${unit}\n${rows}`);
}

describe("the statistics of a map", () => {
  test("are those of its speeds", () => {
    const { statistics } = speeds([90, 100, 110, 20]).result;
    expect(statistics?.mean).toBeCloseTo(80, 9);
    expect(statistics?.peak.speed).toBeCloseTo(110, 9);
    expect(statistics?.dead).toBeCloseTo(0.25, 9);
    // 1 - (10 + 20 + 30 + 60) / (2 * 4 * 80).
    expect(statistics?.uniformity).toBeCloseTo(0.8125, 9);
  });

  test("call it uniform where all is alike, and 1/n where all goes through one place of n", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), (count) => {
        const one = Array.from({ length: count }, (_, at) => (at === 0 ? 50 : 0));
        expect(speeds(one).result.statistics?.uniformity).toBeCloseTo(1 / count, 9);
        expect(speeds(one.map(() => 50)).result.statistics?.uniformity).toBeCloseTo(1, 9);
      }),
      { numRuns: 20 },
    );
  });

  test("take pitot pressures to speeds in the run's air, and leave void and empty rows out", () => {
    const { points } = speeds(["500", "-", '900 void "slipped"'], "pitot[Pa]").result;
    expect(points).toHaveLength(1);
    // Dry air of 20 degC and 1013.25 hPa has 1.2045 kg/m3 (CIPM-2007): sqrt(1000 / 1.2045).
    expect(points[0]?.speed).toBeCloseTo(28.81, 1);
  });
});

describe("the picture of a map", () => {
  const pictured = (map: ReturnType<typeof mapOf>, width?: number) =>
    mapSpec(map.placed.entity, map.result, width === undefined ? {} : { width });

  test("has a disc at each place, as large as its speed, hollow below half the mean", () => {
    const discs = dataOf(pictured(speeds([90, 100, 110, 20])), "places");
    expect(discs.map(({ x }) => x)).toEqual([0, 10, 20, 30].map((x) => expect.closeTo(x, 9)));
    const [first, , , slow] = discs;
    expect(Number(first?.["size"]) / Number(slow?.["size"])).toBeCloseTo(4.5, 9);
    expect(slow?.["fill"]).toBe("#ffffff");
    expect(first?.["about"]).toBe("x 0, y 0 mm: 90 m/s");
  });

  test("says what the speeds come to", () => {
    expect(notesOf(pictured(speeds([90, 100, 110, 20])))).toContain(
      "mean 80 m/s · peak 110 m/s at x 20, y 20 mm · uniformity 0.813",
    );
  });

  test("has one scale for both axes, at any width", () => {
    fc.assert(
      fc.property(fc.integer({ min: 320, max: 1600 }), (width) => {
        const [panel] = panelsOf(pictured(speeds([90, 100, 110, 20]), width));
        if (panel === undefined) throw new Error("one panel");
        const [x, y] = [panel.encoding.x.scale.domain, panel.encoding.y.scale.domain];
        const [across, up] = [panel.width / (x[1] - x[0]), panel.height / (y[1] - y[0])];
        expect(across / up).toBeCloseTo(1, 1);
        expect(panel.width).toBeLessThanOrEqual(width - 32);
      }),
    );
  });

  test("fills its width: where the section leaves room, the speeds stand beside it at their heights", () => {
    const map = speeds([90, 100, 110, 20, 95, 105]);
    const spec = pictured(map, 760);
    const [section, profile] = panelsOf(spec);
    if (section === undefined || profile === undefined) throw new Error("two panels");
    expect(section.width + profile.width).toBeGreaterThan(0.8 * 760);
    expect(profile.encoding.y.scale).toEqual(section.encoding.y.scale);
    expect(dataOf(spec, "profile-places").map(({ x }) => x)).toEqual(
      [90, 100, 110, 20, 95, 105].map((speed) => expect.closeTo(speed, 9)),
    );
    // Places stand in three rows of two, y = 0, 10 and 20 mm.
    expect(dataOf(spec, "profile-means").map(({ x, y }) => [x, y])).toEqual([
      [expect.closeTo(55, 9), 0],
      [expect.closeTo(97.5, 9), expect.closeTo(10, 9)],
      [expect.closeTo(107.5, 9), expect.closeTo(20, 9)],
    ]);
    expect(panelsOf(pictured(map, 360))).toHaveLength(1);
  });

  test.each([320, 480, 760, 1600])("has the number of each place clear of the axis at %i pixels", (width) => {
    const spec = pictured(speeds([90, 100, 110, 20]), width);
    const [panel] = panelsOf(spec);
    const [low = 0, high = 1] = panel?.encoding.y.scale.domain ?? [];
    for (const { y } of dataOf(spec, "speeds")) {
      const pixels = ((Number(y) - low) / (high - low)) * (panel?.height ?? 0);
      expect(pixels).toBeGreaterThan(LABEL_SIZE / 2);
    }
  });

  test("numbers only the quickest place where the places stand close", () => {
    const many = Array.from({ length: 200 }, (_, at) => 50 + (at % 7));
    expect(dataOf(pictured(speeds(many), 400), "speeds").length).toBe(1);
  });

  test("without a place says so", () => {
    expect(dataOf(pictured(speeds(["-"])), "message")[0]?.["text"]).toMatch(/^No place to draw/);
  });
});
