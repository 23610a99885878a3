import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flowAt, summary } from "../../../shared/calc/summary.ts";
import type { Summary } from "../../../shared/model/result.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { AS_CAST, SHORT_SIDE, smallRecord } from "../sample-record.ts";
import { checkClose } from "./close.ts";

const CFM = 4.719474432e-4; // m3/s, NIST SP 811 B.8
const INCH = 0.0254;

function summaryOf(rows: readonly string[], more = "", port = ["side intake"]): Summary {
  return summary(evaluateRun(smallRecord({ port, rows, more })));
}

describe("the summary of the sample record (computed apart)", () => {
  const { peak, mean, bands, event, time } = summary(evaluateRun(AS_CAST));

  test("peak, means and time", () => {
    checkClose(peak?.lift, 0.4 * INCH, 1e-12);
    checkClose(peak?.flow, 228 * CFM, 1e-12);
    checkClose(mean?.flow, 180.37710837961 * CFM, 1e-11);
    checkClose(mean?.from, 0.1 * INCH, 1e-12);
    checkClose(mean?.to, 0.6 * INCH, 1e-12);
    checkClose(bands?.low, 111.92473891974 * CFM, 1e-11);
    checkClose(bands?.middle, 204.77325288576 * CFM, 1e-11);
    checkClose(bands?.high, 224.43333333333 * CFM, 1e-11);
    checkClose(time, 10.5, 1e-12);
  });

  test("has no mean over a cam event, since no cam is stated", () => {
    expect(event).toBeUndefined();
  });
});

describe("the summary of a run", () => {
  test("names the lower of two equal peaks", () => {
    checkClose(summaryOf(["0.1 28 50", "0.2 28 90", "0.3 28 90"]).peak?.lift, 0.2 * INCH, 1e-12);
  });

  test("has a mean by the trapezoid over lift, not over stations", () => {
    // (50+100)/2 · 0.1 + (100+200)/2 · 0.3 = 7.5 + 45, over 0.4
    checkClose(summaryOf(["0.1 28 50", "0.2 28 100", "0.5 28 200"]).mean?.flow, (52.5 / 0.4) * CFM, 1e-12);
  });

  test("stands on rising rows and leaves falling and void ones out", () => {
    const rising = summaryOf(["0.1 28 50", "0.2 28 100"]);
    const all = summaryOf(["0.1 28 50", "0.2 28 100", "0.3 28 999 void", "0.1 28 55"]);
    expect(all).toEqual(rising);
  });

  test("has no means with one station, and nothing without stations", () => {
    expect(summaryOf(["0.1 28 50"])).toEqual({ peak: { lift: 0.1 * INCH, flow: expect.any(Number) } });
    expect(summaryOf([])).toEqual({});
    expect(summaryOf(["- - -"])).toEqual({});
  });

  test("adds up the times of all rows, void and falling ones too, to the reading where it is written", () => {
    checkClose(summary(evaluateRun(SHORT_SIDE)).time, 4.4, 1e-12);
    const text = smallRecord({
      columns: "lift[in] depression[inH2O] flow[cfm] settle[s] read[s]",
      rows: ["0.1 28 50 1.5 4", "0.2 28 100 1.6 -", "0.3 28 10 2 5 void", "0.1 28 50 - 3"],
    });
    checkClose(summary(evaluateRun(text)).time, 4 + 1.6 + 5 + 3, 1e-12);
  });
});

describe("the mean over the cam event", () => {
  const engine = (cam: readonly string[]) => ["engine e", "cam c", 'cam c "c"', ...cam, "head h", "engine e"];
  const PORT = ["of h", "side intake"];
  const event = (cam: readonly string[], rows: readonly string[], port = PORT) =>
    summaryOf(rows, engine(cam).join("\n"), port).event;
  const flow = (...given: Parameters<typeof event>) => {
    const mean = event(...given);
    return mean && "flow" in mean ? mean.flow : undefined;
  };
  const RAMP = ["0.1 28 50", "0.2 28 100", "0.4 28 200"];
  const HARMONIC = ["side intake", "lift 0.4 in", "law harmonic"];

  test("of flow in proportion to lift is the flow at the mean lift, which is half the peak for these laws", () => {
    for (const law of ["harmonic", "cycloidal", "p345", "p4567"]) {
      checkClose(flow(["side intake", "lift 0.4 in", `law ${law}`], RAMP), 100 * CFM, 1e-6);
    }
  });

  test("takes lobe lift times rocker ratio less lash", () => {
    // The mean of max(0, lift − lash) is not the mean less lash; a measured cam of two stretches is.
    const table = [
      "side intake",
      "rocker 1.5",
      "lash 0.050 in",
      "angle[deg] lift[in]",
      "0 0.1",
      "90 0.3",
      "180 0.1",
    ];
    // Valve lift runs evenly from 0.1 to 0.4 in and back: mean 0.25 in, 125 cfm.
    checkClose(flow(table, RAMP), 125 * CFM, 1e-6);
    expect(event(table, RAMP)).toMatchObject({ below: expect.closeTo(0, 9) });
  });

  test("says how long the valve is below the first reading", () => {
    // Lash is no part of the open time: the valve runs evenly from 0 to 0.4 in over 80 of 90 degrees.
    const table = ["side intake", "lash 0.050 in", "angle[deg] lift[in]", "0 0", "90 0.45", "180 0"];
    expect(event(table, RAMP)).toMatchObject({ first: 0.1 * INCH, below: expect.closeTo(0.25, 9) });
  });

  test("is missing where the curve is not known, with the reason", () => {
    expect(event(["side intake", "lift 0.41 in", "law harmonic"], RAMP)).toMatchObject({
      missing: "short-of-cam",
      cam: expect.closeTo(0.41 * INCH, 9),
      last: 0.4 * INCH,
    });
    expect(event(["side exhaust", "lift 0.4 in", "law harmonic"], RAMP)).toBeUndefined();
    expect(event(["side intake", "lift 0.4 in"], RAMP)).toEqual({ missing: "no-event" });
    expect(event(["side intake", "lift 0.4 in", "law harmonic", "lash 0.5 in"], RAMP)).toEqual({
      missing: "no-event",
    });
    expect(event(HARMONIC, ["0.4 28 200"])).toEqual({ missing: "one-station" });
    expect(event(HARMONIC, ["0 28 0.1", "0.4 28 200"])).toEqual({ missing: "one-station" });
  });

  test("needs a first reading at a lift up to which flow goes with lift", () => {
    // L/D 0.25 without seat and throat: 0.1 in is the limit of a valve of 0.4 in, and above that of one of 0.39 in.
    const small = ["0.1 28 2.5", "0.2 28 5", "0.4 28 10"];
    expect(flow(HARMONIC, small, [...PORT, "valve 0.4 in"])).toBeDefined();
    expect(event(HARMONIC, small, [...PORT, "valve 0.39 in"])).toMatchObject({ missing: "begins-too-high" });
  });
});

describe("laws of means over lift", () => {
  const sweep = fc
    .uniqueArray(fc.tuple(fc.integer({ min: 1, max: 700 }), fc.integer({ min: 10, max: 300 })), {
      selector: ([lift]) => lift,
      minLength: 2,
      maxLength: 12,
    })
    .map((points) =>
      points.sort((a, b) => a[0] - b[0]).map(([lift, flow]) => `${(lift / 1000).toFixed(3)} 28.0 ${flow}.0`),
    );

  test("the mean is that of its three bands, and lies between the lowest and the highest flow", () => {
    fc.assert(
      fc.property(sweep, (rows) => {
        const run = evaluateRun(smallRecord({ port: [], rows }));
        const { mean, bands } = summary(run);
        if (run.rising.length < 2) return;
        const flows = run.rising.map(({ flow }) => flow);
        checkClose(mean?.flow, ((bands?.low ?? 0) + (bands?.middle ?? 0) + (bands?.high ?? 0)) / 3, 1e-9);
        expect(mean?.flow).toBeGreaterThanOrEqual(Math.min(...flows) * (1 - 1e-12));
        expect(mean?.flow).toBeLessThanOrEqual(Math.max(...flows) * (1 + 1e-12));
      }),
    );
  });

  test("flow at a lift meets the stations, is straight between them and missing outside", () => {
    const { rising } = evaluateRun(smallRecord({ rows: ["0.1 28 50", "0.2 28 100"] }));
    checkClose(flowAt(rising, 0.1 * INCH), 50 * CFM, 1e-12);
    checkClose(flowAt(rising, 0.15 * INCH), 75 * CFM, 1e-12);
    expect(flowAt(rising, 0.09 * INCH)).toBeUndefined();
    expect(flowAt(rising, 0.21 * INCH)).toBeUndefined();
  });
});
