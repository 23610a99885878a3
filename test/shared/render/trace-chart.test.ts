// The pictures of traces and ladders: what stands in them, at every width, and that hostile texts and odd traces do no harm.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createProject } from "../../../server/analysis/project.ts";
import { drawSvg } from "../../../server/cli/draw.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../../server/generate/example.ts";
import { tracedRun } from "../../../server/rules/examples.ts";
import { findUnit } from "../../../shared/quantity/unit.ts";
import { LABEL_SIZE } from "../../../shared/render/chart-layers.ts";
import { textWidth } from "../../../shared/render/chart-text.ts";
import { DARK_THEME } from "../../../shared/render/chart-theme.ts";
import { extremes } from "../../../shared/render/extremes.ts";
import { ladderChart } from "../../../shared/render/ladder-chart.ts";
import { traceChart } from "../../../shared/render/trace-chart.ts";

type Row = Readonly<Record<string, unknown>>;
type Spec = { readonly datasets: Readonly<Record<string, readonly Row[]>>; readonly [key: string]: unknown };

function analysed(fixture: string) {
  const analysis = createProject(memoryFiles(exampleFiles(fixture), "")).analyse(FIRST_EXAMPLE_FILE);
  if ("problem" in analysis) throw new Error(analysis.problem);
  return analysis;
}

function traceSpec(fixture: string, width?: number): Spec {
  const [trace] = analysed(fixture).traces;
  if (trace === undefined) throw new Error("no trace");
  return traceChart(trace.result, width === undefined ? {} : { width }) as Spec;
}

const LADDER = `${tracedRun(0).slice(0, tracedRun(0).indexOf("trace"))}ladder 0.500 in of r1
  depression[inH2O]  flow[cfm]
  8.0 99.0
  10.0 110.5
  12.0 121.0
  14.0 130.0
  16.0 140.0
  20.0 150.0
  24.0 158.0
  28.0 165.0
`;

function ladderSpec(fixture: string, width?: number): Spec {
  const [ladder] = analysed(fixture).ladders;
  if (ladder === undefined) throw new Error("no ladder");
  return ladderChart(ladder.result, width === undefined ? {} : { width }) as Spec;
}

const labels = (spec: Spec, name: string) => (spec.datasets[name] ?? []).map(({ text }) => text);

describe("the picture of a trace", () => {
  test("marks the band, when it settled, the steady stretch and the letting-go", () => {
    const { datasets, ...spec } = traceSpec(tracedRun(0.05));
    const all = { datasets, ...spec };
    expect(labels(all, "depression-labels")).toEqual(["settled 1.5 s"]);
    expect(labels(all, "area-labels")).toEqual([
      "lets go: -4.9 %",
      expect.stringMatching(/^steady: 185\.\d+ ± 0\.\d+ cfm$/),
    ]);
    expect(datasets["depression-bands"]).toEqual([expect.objectContaining({ x2: 2.1 })]);
    expect(datasets["depression-fit"]?.length).toBeGreaterThan(100);
    expect(JSON.stringify(spec["vconcat"])).toContain("Apparent area, in2");
  });

  test("leads from each sample, and from what happened, to the line that it stands on", () => {
    const record = tracedRun(0.05);
    const block = record.slice(record.indexOf("trace 0.500")).split("\n");
    const { datasets } = traceSpec(record);
    const lineOf = (row: Row | undefined) => block[Number(row?.["line"])];
    for (const row of datasets["depression-samples"] ?? []) {
      expect(Number(lineOf(row)?.trim().split(/ +/)[0])).toBeCloseTo(Number(row["x"]), 9);
      expect(row["run"]).toBe("trace 0.500 in of r1");
    }
    expect(datasets["depression-samples"]).toHaveLength(22);
    expect(lineOf(datasets["depression-events"]?.[0])).toMatch(/^ +1\.50 /);
    expect(lineOf(datasets["area-events"]?.[0])).toMatch(/^ +1\.30 /);
    expect(datasets["area-events"]?.[0]?.["about"]).toMatch(/^let go at 1\.3 s and 27\.5 inH2O, rising/);
  });

  test("has no line where samples are missing", () => {
    const tenths = Array.from({ length: 30 }, (_, at) => at);
    const { datasets } = traceSpec(
      tracedRun(
        0,
        tenths.filter((time) => time < 19 || time > 25),
      ),
    );
    const stretches = Map.groupBy(datasets["depression-lines"] ?? [], ({ series }) => series);
    expect([...stretches.values()].map((rows) => [rows[0]?.["x"], rows.at(-1)?.["x"]])).toEqual([
      [0, 1.8],
      [2.6, 2.9],
    ]);
  });

  test("of a long series has at most 2 000 points, the extremes among them", () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => at / 10);
    const { datasets } = traceSpec(tracedRun(0, rows).replace(/ 28\.0 +195\.3/, " 31.7  195.3"), 1600);
    const drawn = [...(datasets["depression-samples"] ?? []), ...(datasets["area-samples"] ?? [])];
    expect(drawn.length).toBeLessThanOrEqual(2000);
    expect(Math.max(...(datasets["depression-samples"] ?? []).map(({ y }) => Number(y)))).toBeCloseTo(
      31.7,
      6,
    );
    expect(drawn.every(({ color }) => color === "transparent")).toBe(true);
  });

  test("is shown in the units asked for", () => {
    const kilopascals = findUnit("kPa")?.unit;
    const [trace] = analysed(tracedRun(0.05)).traces;
    if (trace === undefined || kilopascals === undefined) throw new Error("no trace");
    const spec = JSON.stringify(traceChart(trace.result, { units: [kilopascals] }));
    expect(spec).toContain("Depression, kPa");
    expect(spec).not.toContain("Depression, inH2O");
  });

  test("without a flow shows the depression alone, and says why", () => {
    const bare = tracedRun(0)
      .replace("  time[s]  depression[inH2O]  flow[cfm]", "  time[s]  depression[inH2O]")
      .replace(/^( +\d\.\d\d +\d+\.\d) +\d+\.\d$/gm, "$1");
    const spec = traceSpec(bare);
    expect(Object.keys(spec.datasets)).not.toContain("area-lines");
    expect(JSON.stringify(spec.datasets["notes"])).toContain("no flow");
  });

  test("that cannot be used says so", () => {
    const short = tracedRun(0, [0, 1, 2]);
    expect(JSON.stringify(traceSpec(short).datasets)).toContain("No sample of this trace can be used");
  });

  test.each([320, 480, 760, 1600])("has its labels inside and none on another at %d pixels", (width) => {
    for (const drop of [0.05, 0.02, -0.05]) {
      const spec = traceSpec(tracedRun(drop), width);
      const panels = spec["vconcat"] as readonly {
        readonly width: number;
        readonly height: number;
        readonly encoding: {
          readonly x: { readonly scale: { readonly domain: readonly [number, number] } };
          readonly y: { readonly scale: { readonly domain: readonly [number, number] } };
        };
      }[];
      ["depression-labels", "area-labels"].forEach((name, at) => {
        const panel = panels[at];
        if (panel === undefined) throw new Error("no panel");
        const { x, y } = panel.encoding;
        const boxes = (spec.datasets[name] ?? []).map((row) => {
          const left =
            ((Number(row["x"]) - x.scale.domain[0]) / (x.scale.domain[1] - x.scale.domain[0])) * panel.width;
          const middle =
            ((Number(row["y"]) - y.scale.domain[0]) / (y.scale.domain[1] - y.scale.domain[0])) * panel.height;
          return { left, right: left + textWidth(String(row["text"]), LABEL_SIZE), middle };
        });
        const steps = (spec.datasets[name.replace("labels", "marks")] ?? [])
          .filter((row) => row["x"] === row["x2"] && row["y2"] === y.scale.domain[1])
          .map(
            (row) =>
              ((Number(row["x"]) - x.scale.domain[0]) / (x.scale.domain[1] - x.scale.domain[0])) *
              panel.width,
          );
        expect(steps).toHaveLength(1);
        for (const [index, box] of boxes.entries()) {
          for (const step of steps) expect(box.left >= step || box.right <= step).toBe(true);
          expect(box.left).toBeGreaterThanOrEqual(-1e-6);
          expect(box.right).toBeLessThanOrEqual(panel.width + 1e-6);
          for (const other of boxes.slice(index + 1)) {
            const apart =
              Math.abs(box.middle - other.middle) >= LABEL_SIZE ||
              box.right <= other.left ||
              other.right <= box.left;
            expect(apart).toBe(true);
          }
        }
      });
    }
  });

  test("is drawn, in the dark too, and holds the record's texts as texts", async () => {
    const [trace] = analysed(tracedRun(0.05).replaceAll(/\br1\b/g, "r-1")).traces;
    if (trace === undefined) throw new Error("no trace");
    const svg = await drawSvg(traceChart(trace.result, { theme: DARK_THEME, width: 320 }));
    expect(svg).toContain("trace 0.500 in of r-1");
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});

describe("the picture of a ladder", () => {
  test("shows steps, fit, nozzle and the numbers of its axes as depressions", async () => {
    const spec = ladderSpec(LADDER);
    expect(spec.datasets["steps"]).toHaveLength(8);
    expect(labels(spec, "off-labels")).toEqual(["ideal nozzle"]);
    expect(spec.datasets["steps"]?.[0]).toMatchObject({
      about: expect.stringMatching(/^step 1: 99\.\d+ cfm at 8 inH2O, [+-]\d\.\d % off the square root law$/),
      run: "ladder 0.500 in of r1",
      line: 2,
    });
    const svg = await drawSvg(spec);
    expect(svg).toContain(">20<");
    expect(svg).not.toMatch(/NaN|undefined/);
  });

  test.each([320, 1600])("is drawn at %d pixels", async (width) => {
    expect(await drawSvg(ladderSpec(LADDER, width))).toContain("ladder 0.500 in of r1");
  });

  test("with too few steps says so", () => {
    const short = LADDER.split("\n").slice(0, -7).join("\n");
    expect(JSON.stringify(ladderSpec(short).datasets)).toContain("fewer than three steps");
  });
});

describe("thinning", () => {
  const series = fc.array(
    fc.oneof(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), fc.constant(Number.NaN)),
    {
      maxLength: 300,
    },
  );

  test("keeps the extremes and the order, and never more than four of a stretch", () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 1, max: 20 }), (values, buckets) => {
        const all = Float64Array.from(values);
        const kept = extremes(all, 0, all.length, buckets);
        const real = values.filter((value) => !Number.isNaN(value));
        expect(kept).toEqual([...new Set(kept)].sort((a, b) => a - b));
        expect(kept.length).toBeLessThanOrEqual(4 * buckets);
        const shown = kept.map((at) => all[at] ?? Number.NaN);
        if (real.length === 0) expect(shown).toEqual([]);
        else {
          expect(Math.max(...shown)).toBe(Math.max(...real));
          expect(Math.min(...shown)).toBe(Math.min(...real));
        }
      }),
    );
  });
});
