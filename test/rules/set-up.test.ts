// What the set-up of a session is judged by: once a session, with limits that are inclusive where they say so.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import {
  BENCH,
  checkRecord,
  codesOf,
  findingOf,
  findingsOf,
  HEAD,
  PORT,
  record,
  SESSION,
} from "../kit/check-record.ts";

const ROWS = ["0.100 28.0 55.0", "0.200 28.0 108.0", "0.300 28.0 150.0"];

/** The session without a line, or with another in its place. */
function session(keyword: string, line?: string): readonly string[] {
  return SESSION.flatMap((stated) => (stated.split(" ")[0] === keyword ? (line ?? []) : [stated]));
}

function checkCodes(fixture: string, codes: readonly string[]): void {
  expect(codesOf(fixture)).toEqual(codes);
}

test("a record in which all is stated and well has no findings", () => {
  checkCodes(record({ rows: ROWS }), []);
});

describe("what is missing", () => {
  const twoRuns = (conditions: readonly string[]) =>
    `${record({ session: conditions, rows: ROWS })}\nrun r2\n${HEAD}\n${ROWS.join("\n")}`;

  test.each([
    ["bench", "no-bench", "warning"],
    ["target", "no-target", "hint"],
    ["air", "no-air", "warning"],
    ["leak", "no-leak", "warning"],
    ["entry", "no-entry", "hint"],
  ])("%s: once on the session's heading, however many runs there are", (keyword, code, severity) => {
    const found = findingsOf(twoRuns(session(keyword)));
    const lines = twoRuns(session(keyword)).split("\n");
    expect(found.map(({ finding }) => finding.code)).toEqual([code]);
    expect(found[0]?.severity).toBe(severity);
    expect(lines[found[0]?.finding.span.line ?? 0]).toBe("session 2026-03-02");
  });

  test.each([
    ["target", "target 28 inchH2O", "unknown-unit"],
    ["air", "air 20 degC", "missing-value"],
    ["leak", "leak 1,2 cfm at 28 inH2O", "decimal-comma"],
    ["entry", "entry sharp", "unknown-choice"],
  ])("%s is not, where its line is there but cannot be read", (keyword, line, code) => {
    checkCodes(record({ session: session(keyword, line), rows: ROWS }), [code]);
  });

  test("nor is a bench's repeatability", () => {
    checkCodes(record({ bench: ["shows flow", "repeat 0,4 %", "within 0.2 inH2O"], rows: ROWS }), [
      "decimal-comma",
    ]);
  });

  test("a run that states it itself is not spoken of", () => {
    const stated = record({ session: session("leak"), run: ["leak none"], rows: ROWS });
    checkCodes(stated, []);
    checkCodes(`${stated}\nrun r2\n${HEAD}\n${ROWS.join("\n")}`, ["no-leak"]);
  });

  test("without a session it is the run's own heading that is marked", () => {
    checkRecord(`
      headnote 1
      bench north
        shows flow
        repeat 0.4 %
      run r1
      #<^^^^ warning[no-air]
      #<^^^^ warning[no-bench]
      #<^^^^ warning[no-leak]
      #<^^^^ hint[no-target]
        lift[in] depression[inH2O] flow[cfm]
        0.100    28.0              55.0
    `);
  });

  test("repeat: a bench without it is asked once, unless its file has repeats enough", () => {
    const bench = ["shows flow", "within 0.2 inH2O"];
    checkCodes(record({ bench, rows: ROWS }), ["no-repeat"]);
    // Two lifts read three times: four degrees of freedom, the least that is pooled.
    const repeated = ["55.0", "55.2", "54.9"].map((flow) => `0.100 28.0 ${flow}`);
    const above = ["108.0", "108.3", "107.8"].map((flow) => `0.200 28.0 ${flow}`);
    checkCodes(record({ bench, rows: [...repeated, ...above] }), []);
    checkCodes(record({ bench, rows: [...repeated, ...above.slice(1)] }), ["no-repeat"]);
  });

  test("humidity: any of its three forms will do", () => {
    for (const humidity of ["0 %RH", "dew-point 5 degC", "wet-bulb 15 degC"])
      checkCodes(record({ session: session("air", `air 20 degC 1000 hPa ${humidity}`), rows: ROWS }), []);
    checkCodes(record({ session: session("air", "air 20 degC 1000 hPa"), rows: ROWS }), ["no-humidity"]);
  });

  test("an exhaust port is asked for its stub and not for its entry", () => {
    const port = PORT.map((line) => (line === "side intake" ? "side exhaust" : line));
    checkCodes(record({ port, session: session("entry"), rows: ROWS }), ["no-entry"]);
    checkCodes(record({ port, session: session("entry", "stub none"), rows: ROWS }), []);
  });
});

describe("air", () => {
  // U.S. Standard Atmosphere 1976 at 0 m: 101325 Pa; the limit above it is 1.2 inHg = 4063.67 Pa.
  test.each([
    ["1053.8 hPa", []],
    ["1054.0 hPa", ["altimeter-as-station"]],
  ])("%s at sea level, on either side of 1.2 inHg above the standard atmosphere", (pressure, codes) => {
    const air = `air 20 degC ${pressure} 40 %RH elevation 0 ft`;
    checkCodes(record({ session: session("air", air), rows: ROWS }), codes);
  });

  test("a pressure without an elevation is not judged, nor is an altimeter setting", () => {
    checkCodes(record({ session: session("air", "air 20 degC 30.9 inHg 40 %RH"), rows: ROWS }), []);
    const reduced = "air 20 degC 40 %RH altimeter 30.02 inHg elevation 5000 ft";
    checkCodes(record({ session: session("air", reduced), rows: ROWS }), []);
  });

  test("what no shop has is not taken", () => {
    checkCodes(record({ session: session("air", "air 20 degC 29.92 hPa 40 %RH"), rows: ROWS }), ["no-air"]);
  });
});

describe("adapter", () => {
  const withBore = (adapter: string) =>
    record({
      port: [...PORT, "of h1", "head h1", "engine e1", "engine e1", "bore 100 mm"],
      session: [...SESSION, `adapter ${adapter}`],
      rows: ROWS,
    });

  test.each([
    ["95 mm", []],
    ["105 mm", []],
    ["94.9 mm", ["adapter-off-bore"]],
    ["105.1 mm", ["adapter-off-bore"]],
  ])("of %s on a bore of 100 mm, with 5 %% allowed either way", (adapter, codes) => {
    checkCodes(withBore(adapter), codes);
  });
});

describe("leak", () => {
  // Readings of 55, 108 and 150 cfm: the first alone is near the limits of 5 and 10 %.
  test.each([
    ["2.75 cfm", undefined],
    ["2.80 cfm", "hint"],
    ["5.50 cfm", "hint"],
    ["5.60 cfm", "warning"],
  ])("of %s in a reading of 55 cfm", (leak, severity) => {
    const lines = session("leak", `leak ${leak} at 28 inH2O`);
    const [first] = findingsOf(record({ session: lines, rows: ROWS }));
    expect(first?.severity).toBe(severity);
    if (severity !== undefined) expect(first?.finding.code).toBe("large-leak");
  });

  test("follows a limit that the workspace sets", () => {
    const lines = session("leak", "leak 2.0 cfm at 28 inH2O");
    const limits = { ...DEFAULT_CONFIG.limits, leakHint: 0.03 };
    expect(codesOf(record({ session: lines, rows: ROWS }), { ...DEFAULT_CONFIG, limits })).toEqual([
      "large-leak",
    ]);
  });
});

describe("a bench that shows percent", () => {
  const bench = ["shows percent", "repeat 0.4 %", "within 0.2 inH2O", "range low 150 cfm at 28 inH2O"];
  const head = "lift[in] depression[inH2O] reading[%]";
  const reading = (share: string, depression = "28.0") =>
    record({ bench, head, port: PORT, rows: [`0.100 ${depression} ${share}`] });

  test.each([
    ["20", []],
    ["20.0", []],
    ["19.9", ["outside-range"]],
  ])("read at %s %%", (share, codes) => {
    checkCodes(reading(share), codes);
  });

  test.each([
    ["100", []],
    ["100.1", ["outside-range"]],
  ])("read at %s %% of its range", (share, codes) => {
    const wide = bench.map((line) => line.replace("range low 150", "range low 60"));
    checkCodes(record({ bench: wide, head, rows: [`0.100 28.0 ${share}`] }), codes);
  });

  test("is to be read at its range's own depression, to within the band", () => {
    checkCodes(reading("40", "27.8"), []);
    checkCodes(reading("40", "27.7"), ["off-range", "off-target"]);
  });

  test("with several ranges asks for the column that names them, and knows the names", () => {
    const two = [...bench, "range high 300 cfm at 28 inH2O"];
    checkCodes(record({ bench: two, head, rows: ["0.100 28.0 40"] }), ["missing-columns"]);
    const named = "range lift[in] depression[inH2O] reading[%]";
    checkCodes(record({ bench: two, head: named, rows: ["low 0.100 28.0 40"] }), []);
    const wrong = record({ bench: two, head: named, rows: ["hihg 0.100 28.0 40"] });
    expect(findingOf(wrong, "name-not-found")).toMatchObject({
      message: "bench 'north' has no range 'hihg'",
      help: "did you mean high?",
      finding: { fix: { title: "Write high" } },
    });
    const other = record({ bench: two, head: named, rows: ["whole 0.100 28.0 40"] });
    expect(findingOf(other, "name-not-found").help).toBe("take one that it has: low, high");
    const none = record({ bench: ["shows percent", "repeat 0.4 %"], head: named, rows: ["low 0.1 28.0 40"] });
    expect(findingOf(none, "name-not-found").help).toBe(
      "write it into the bench, such as: range low 450 cfm at 28 inH2O",
    );
  });
});

describe("a bench that shows a signal", () => {
  const bench = ["shows signal", "repeat 0.4 %", "signal[V] flow[cfm]", "1.0 40.0", "3.0 120.0"];
  const head = "lift[in] depression[inH2O] signal[V]";
  test.each([
    ["1.0", []],
    ["3.0", []],
    ["0.99", ["outside-calibration"]],
    ["3.01", ["outside-calibration"]],
  ])("of %s V in a table from 1 to 3 V", (signal, codes) => {
    checkCodes(record({ bench, head, rows: [`0.200 28.0 ${signal}`] }), codes);
  });
});

describe("quoting", () => {
  // A ratio of 1.5 either way is still taken.
  test.each([
    ["42", []],
    ["42.1", ["scaled-too-far"]],
  ])("at %s inH2O what was read at 28", (quote, codes) => {
    checkCodes(record({ session: [...SESSION, `quote ${quote} inH2O`], rows: ROWS }), codes);
  });

  test("at two thirds of the target is still taken, and below it once a run", () => {
    const at = (quote: string) => record({ session: [...SESSION, `quote ${quote} inH2O`], rows: ROWS });
    checkCodes(at("18.7"), []);
    checkCodes(at("18.6"), ["scaled-too-far"]);
  });
});

describe("weights", () => {
  test("the workspace turns a finding off, up or down", () => {
    const lacking = record({ session: session("leak"), rows: ROWS });
    for (const level of ["error", "warning", "hint"] as const) {
      const config = { ...DEFAULT_CONFIG, severity: new Map([["no-leak", level]]) };
      expect(findingsOf(lacking, "/main.headnote", config).map(({ severity }) => severity)).toEqual([level]);
    }
    expect(codesOf(lacking, { ...DEFAULT_CONFIG, severity: new Map([["no-leak", "off"]]) })).toEqual([]);
  });

  test("no order of the session's lines changes what is found", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...SESSION], { minLength: 3 }), (lines) => {
        const sorted = SESSION.filter((line) => lines.includes(line));
        const codes = (conditions: readonly string[]) =>
          [...codesOf(record({ bench: BENCH, session: conditions, rows: ROWS }))].sort();
        expect(codes(lines)).toEqual(codes(sorted));
      }),
      { numRuns: 40 },
    );
  });
});
