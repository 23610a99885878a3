import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { POINT_CALCULATIONS } from "../../../shared/calc/points/index.ts";
import { type TableReport, tableReportSchema } from "../../../shared/messages/report.ts";
import { tableReport } from "../../../shared/render/table-report.ts";
import { AS_CAST, SHORT_SIDE, smallRecord } from "../sample-record.ts";
import { HOSTILE, tableInput } from "./table-input.ts";

function reportOf(text: string): TableReport {
  return tableReport(tableInput(text));
}

function firstRun(text: string): TableReport["runs"][number] {
  const [run] = reportOf(text).runs;
  if (run === undefined) throw new RangeError("no run");
  return run;
}

describe("the report of a table", () => {
  test("says what the sample record says, in its own units and in SI", () => {
    const { points, summary, ...facts } = firstRun(AS_CAST);
    expect(facts).toEqual({
      id: "i3-as-cast",
      title: null,
      port: "a114-intake",
      side: "intake",
      cylinder: 3,
      stage: "as cast",
      bench: "north",
      date: "2026-11-20T09:30+01:00",
      direction: "draws",
      target: { value: 28, unit: "inH2O", si: 6974.48948 },
      quote: { value: 28, unit: "inH2O", si: 6974.48948 },
      reference: null,
      air: {
        density: { value: 1.16201154379, unit: "kg/m3", si: 1.16201154379 },
        temperature: { value: 71.5, unit: "degF", si: 295.094444444 },
        pressure: { value: 29.18, unit: "inHg", si: 98814.8205252 },
      },
    });
    expect(points).toHaveLength(6);
    expect(summary.peak?.lift).toEqual({ value: 0.4, unit: "in", si: 0.01016 });
  });

  test("gives a point all its values", () => {
    expect(firstRun(AS_CAST).points[3]).toMatchObject({
      line: 43,
      void: false,
      lift: { value: 0.4, unit: "in", si: 0.01016 },
      depression: { value: 28, unit: "inH2O", si: 6974.48948 },
      correctedFlow: { value: 228, unit: "cfm" },
      massFlow: { unit: "lb/min" },
      effectiveArea: { unit: "in2" },
      liftRatio: 0.19801980198,
      cd: { curtain: expect.closeTo(0.62374629207), gap: expect.any(Number) },
      velocity: { curtain: { unit: "ft/s" }, throat: { unit: "ft/s" }, pinch: { unit: "ft/s" } },
      settle: { value: 1.6, unit: "s", si: 1.6 },
      uncertainty: { unit: "cfm" },
      findings: [],
    });
  });

  test("keeps void points, at the line of the file that they stand on", () => {
    const lines = SHORT_SIDE.split("\n");
    const points = firstRun(SHORT_SIDE).points;
    expect(points.map((point) => point.void)).toEqual([false, false, true, false]);
    for (const { line, lift } of points) expect(lines[line - 1]?.trim()).toMatch(`${lift?.value}`);
  });

  test("has null where nothing is known", () => {
    const [point] = firstRun("run r\n  lift[in] depression[inH2O] flow[cfm]\n  - - -\n").points;
    expect(point).toEqual({
      line: 3,
      void: false,
      lift: null,
      depression: null,
      correctedFlow: null,
      uncertainty: null,
      massFlow: null,
      effectiveArea: null,
      liftRatio: null,
      cd: { curtain: null, gap: null, throat: null, head: null },
      velocity: { curtain: null, throat: null },
      settle: null,
      findings: [],
    });
  });

  test("is valid without runs, and for a run without rows, bench or port", () => {
    expect(reportOf("")).toEqual({
      schemaVersion: 1,
      file: "a.headnote",
      runs: [],
      plateChecks: [],
      traces: [],
      ladders: [],
    });
    const run = firstRun("run r");
    expect(run.points).toEqual([]);
    expect(run.summary).toEqual({
      ...{ peak: null, mean: null, bands: null, eventMean: null, time: null },
      problems: [],
    });
    expect(run.air.temperature).toEqual({ value: 15, unit: "degC", si: 288.15 });
  });

  test("says why a run has no mean over its cam's event", () => {
    const withCam = (lobe: string) => {
      const head = smallRecord({
        port: ["of h1", "side intake", "valve 2.000 in"],
        rows: ["0.1 28 50", "0.2 28 90"],
      });
      return `${head}\nhead h1\n  engine e1\nengine e1\n  cam c1\ncam c1\n  side intake\n  law p345\n  lift ${lobe}\n`;
    };
    const summaryOf = (lobe: string) => firstRun(withCam(lobe)).summary;
    expect(summaryOf("0.3 in")).toMatchObject({ eventMean: null, problems: ["short-of-cam"] });
    expect(summaryOf("0.2 in")).toMatchObject({ eventMean: { unit: "cfm" }, problems: [] });
  });

  test("names the air of a reference, and passes on the findings of a row", () => {
    const text = smallRecord({ session: ["reference isa"], rows: ["0.1 28 50"] });
    const report = tableReport(tableInput(text, () => ["off-target", "impossible"]));
    expect(report.runs[0]?.reference).toBe("isa");
    expect(report.runs[0]?.points[0]?.findings).toEqual(["off-target", "impossible"]);
  });

  test("gives the station pressure in the unit of an altimeter setting", () => {
    const air = "air 20 degC altimeter 29.8 inHg elevation 500 m";
    const pressure = firstRun(smallRecord({ session: [air] })).air.pressure;
    // 950.96498 hPa: Smithsonian form, MetPy test value.
    expect(pressure).toMatchObject({ unit: "inHg", si: expect.closeTo(95096.498, 0) });
  });

  test("has every calculation of the list under its id", () => {
    const [point] = firstRun(AS_CAST).points;
    for (const { id } of POINT_CALCULATIONS) expect(point).toHaveProperty(id);
  });

  test("shows written values without the noise of conversion", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (thousandths) => {
        const written = (thousandths / 1000).toFixed(3);
        const text = smallRecord({ rows: [`${written} 28.0 1${written}`] });
        const [point] = firstRun(text).points;
        expect(point?.lift?.value).toBe(Number(written));
        expect(point).toHaveProperty("correctedFlow.value", Number(`1${written}`));
      }),
    );
  });

  test.each(HOSTILE)("keeps %j as data", (hostile) => {
    const stage = hostile.replaceAll("\\", "\\\\").replaceAll('"', '\\"');
    const report = reportOf(smallRecord({ run: [`stage "${stage}"`], rows: ["0.1 28 50"] }));
    expect(tableReportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
    expect(report.runs[0]?.stage).toBe(hostile);
  });
});
