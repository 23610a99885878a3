// What is found in traces: bad samples and logs, letting go, and readings that were taken early.
import { describe, expect, test } from "vitest";
import { tracedRun } from "../../server/rules/examples.ts";
import { checkRecord, codesOf, findingOf } from "../kit/check-record.ts";

const SESSION = `
      headnote 1
      bench north
        shows flow
        repeat 0.4 %
        within 0.2 inH2O
      session 2026-03-02
        bench north
        target 28 inH2O
        air 20 degC 1000 hPa 40 %RH
        leak none
      run r1
        lift[in] depression[inH2O] flow[cfm]
        0.500 28.0 195.2`;

const seconds = Array.from({ length: 40 }, (_, at) => at / 10);
const inches = (t: number) => 28 * -Math.expm1(-t / 0.3);

/** A record whose trace is in a log of this text, named as the line says. */
function logged(log: string, line = 'log "t.csv" time "t" s depression "dp" inH2O flow "q" cfm'): string {
  const record = `${SESSION}\n      trace 0.500 in of r1\n        ${line}\n`
    .replaceAll(/^ {6}/gm, "")
    .trimStart();
  return `#- /main.headnote\n${record}#- /t.csv\n${log}`;
}

const csv = (head: string, row: (t: number) => string, times = seconds) =>
  `${head}\n${times.map(row).join("\n")}\n`;
const plain = (t: number) =>
  `${t.toFixed(2)},${inches(t).toFixed(2)},${(36.9 * Math.sqrt(inches(t))).toFixed(1)}`;
const GOOD = csv("t,dp,q", plain);

const codes = (fixture: string) => codesOf(fixture);
const why = (fixture: string) => findingOf(fixture, "trace-unusable").message.replace(/^.*trace: /, "");

describe("a log is read", () => {
  test.each([
    ["as it is", GOOD],
    ["with lines about the logger above its head", `logger 3\nserial;17\n\n${GOOD}`],
    [
      "with its columns in another order",
      csv("q,t,dp", (t) => [plain(t).split(",")[2], t, inches(t)].join(",")),
    ],
    ["with semicolons and decimal commas", GOOD.replaceAll(",", ";").replaceAll(".", ",")],
    ["with tabs", GOOD.replaceAll(",", "\t")],
    ["with units in a line below the head", GOOD.replace("\n", "\ns,inH2O,cfm\n")],
    ["with quotes and other line ends", GOOD.replaceAll(/(\d+\.\d+)/g, '"$1"').replaceAll("\n", "\r\n")],
    ["that begins with a byte order mark", `\ufeff${GOOD}`],
  ])("%s", (_, log) => {
    expect(codes(logged(log))).toEqual([]);
  });

  test("also without a flow, which tells the approach alone", () => {
    expect(codes(logged(GOOD, 'log "t.csv" time "t" s depression "dp" inH2O'))).toEqual([]);
  });

  test("in its own units", () => {
    const pascals = csv("ms,Pa", (t) => `${t * 1000},${inches(t) * 249.08891}`);
    expect(codes(logged(pascals, 'log "t.csv" time "ms" ms depression "Pa" Pa'))).toEqual([]);
  });
});

describe("a log that cannot be used says why", () => {
  const line = (path: string) => `log "${path}" time "t" s depression "dp" inH2O`;
  test.each([
    ["it is not there", logged(GOOD, line("u.csv")), '"u.csv" cannot be read: it is not there'],
    ["it lies outside", logged(GOOD, line("/t.csv")), '"/t.csv" lies outside the workspace'],
    [
      "a column is not there",
      logged(GOOD.replace("dp", "DP")),
      'the log has no column "dp"; it has t, DP, q',
    ],
    ["it is empty", logged(""), 'the log has no column "t"; it has no head'],
    ["it has a head alone", logged("t,dp,q\n"), "no sample can be used, 8 are wanted"],
    ["it has one sample", logged("t,dp,q\n0,0,0\n"), "one sample can be used, 8 are wanted"],
    [
      "another unit stands below the head",
      logged(GOOD.replace("\n", "\ns,Pa,cfm\n")),
      "the log has dp in Pa, the record says inH2O",
    ],
    [
      "another unit stands behind the name",
      logged(GOOD.replace("dp", "dp [Pa]"), 'log "t.csv" time "t" s depression "dp [Pa]" inH2O'),
      "the log has dp [Pa] in Pa, the record says inH2O",
    ],
    [
      "units are mixed",
      logged(csv("t,dp,q", (t) => (t < 2 ? plain(t) : `${t},${inches(t) * 249},190`))),
      "the depression reaches 6972 inH2O, far beyond the target of 28 inH2O",
    ],
    [
      "the depression is negative",
      logged(csv("t,dp,q", (t) => `${t},${-inches(t)},190`)),
      "the depression is below zero",
    ],
    [
      "time runs backwards",
      logged(csv("t,dp,q", plain, [...seconds].reverse())),
      "time runs backwards in 39 of 40 samples, first in sample 2",
    ],
    ["it holds no numbers", logged(csv("t,dp,q", () => "x,y,z")), "no sample can be used, 8 are wanted"],
  ])("%s", (_, fixture, expected) => {
    expect(codes(fixture)).toEqual(["trace-unusable"]);
    expect(why(fixture)).toBe(expected);
  });

  test("and a trace with a log and rows says to keep one", () => {
    const both = `${SESSION}\n      trace 0.500 in of r1\n        log "t.csv" time "t" s depression "dp" inH2O\n        time[s] depression[inH2O]\n        0.1 2.0\n`;
    expect(why(both)).toBe("it has a log and rows of its own");
  });
});

describe("samples that cannot be used are left out, and the others are used", () => {
  test("where there is no number", () => {
    const gaps = logged(csv("t,dp,q", (t) => (t > 2 && t < 2.3 ? `${t},NaN,err` : plain(t))));
    expect(findingOf(gaps, "samples-left-out").message).toBe(
      "2 of 40 samples are left out, first sample 22: no number can be read there",
    );
  });

  test("where the clock jumps back", () => {
    const jumped = logged(csv("t,dp,q", (t) => (t === 2 ? plain(t).replace("2.00", "1.20") : plain(t))));
    expect(findingOf(jumped, "samples-left-out").message).toBe(
      "1 of 40 samples is left out, first sample 21: time does not go on there",
    );
  });
});

describe("a gap in a trace says how long it is, where, and what it leaves open", () => {
  const long = Array.from({ length: 60 }, (_, at) => at / 10);
  const without = (from: number, to: number, times = long) => times.filter((t) => t <= from || t >= to);
  const made = (times: readonly number[], drop = 0, at = Number.POSITIVE_INFINITY) =>
    logged(
      csv(
        "t,dp,q",
        (t) => {
          const flow = 36.9 * Math.sqrt(inches(t)) * (t >= at ? 1 - drop : 1);
          return `${t.toFixed(2)},${inches(t).toFixed(2)},${flow.toFixed(1)}`;
        },
        [...times],
      ),
    );
  const said = (fixture: string) => {
    const { message, severity } = findingOf(fixture, "trace-gap");
    return `${severity}: ${message}`;
  };

  test("on the way up", () => {
    expect(said(made(without(0.3, 1.1)))).toBe(
      "warning: the trace has no samples for 0.8 s from 0.3 s on, where they usually stand 0.1 s apart: on the way up, where a letting-go would not be seen and the fit of the approach has nothing to go by",
    );
  });

  test("over the moment when the depression came to hold", () => {
    expect(said(made(without(0.9, 1.9)))).toMatch(
      /: the depression came to hold somewhere between 0\.9 s and 1\.9 s$/,
    );
  });

  test("over the moment when the port let go", () => {
    expect(said(made(without(2.5, 3.3), 0.06, 3))).toMatch(
      /; the port let go somewhere between 2\.5 s and 3\.3 s$|: the port let go somewhere between 2\.5 s and 3\.3 s$/,
    );
  });

  test("while it holds", () => {
    expect(said(made(without(3, 4)))).toBe(
      "warning: the trace has no samples for 1.0 s from 3.0 s on, where they usually stand 0.1 s apart: the steady means leave it out",
    );
  });

  test("and how many more there are", () => {
    const two = made(without(4.5, 5.2, without(3, 4)));
    expect(said(two)).toContain(
      " for 1.0 s from 3.0 s on, where they usually stand 0.1 s apart (and in another gap, 1.7 s in all): ",
    );
  });

  test("five usual steps are none, nor are the uneven steps of a log that thins out", () => {
    expect(codes(made(without(3, 3.5)))).toEqual([]);
    expect(codes(made([...long.filter((t) => t < 3), 3.4, 3.8, 4.2, 4.6, 5]))).toEqual([]);
  });

  test("samples that are no numbers make one too", () => {
    const dead = logged(csv("t,dp,q", (t) => (t > 2 && t < 2.9 ? `${t},NaN,err` : plain(t)), [...long]));
    expect(codes(dead)).toEqual(["samples-left-out", "trace-gap"]);
  });

  test("in the rows of a record it is marked at the first row behind it, and points to the last before it", () => {
    const rows = tracedRun(
      0,
      without(
        5,
        17,
        seconds.map((_, at) => at),
      ),
    );
    const { finding } = findingOf(rows, "trace-gap");
    const lines = rows.split("\n");
    expect(lines[finding.span.line]?.trim()).toMatch(/^1\.70 /);
    expect(lines[finding.related[0]?.span.line ?? 0]?.trim()).toMatch(/^0\.50 /);
  });
});

describe("a trace in the record itself", () => {
  test("without a column of depressions is asked for it, and nothing more", () => {
    const rows = seconds.map((t) => `        ${t} ${(10 * t).toFixed(1)}`).join("\n");
    expect(codes(`${SESSION}\n      trace 0.500 in of r1\n        time[s] flow[cfm]\n${rows}\n`)).toEqual([
      "missing-columns",
    ]);
  });

  test("of a run that is not there says only that", () => {
    expect(codes(tracedRun(0.05).replace("of r1", "of r2"))).toEqual(["name-not-found"]);
  });

  test("leaves void rows out", () => {
    const spoilt = tracedRun(0).replace(/(1\.70 .*)\n/, '$1 void "bumped"\n');
    expect(codes(spoilt)).toEqual([]);
    expect(codes(tracedRun(0).replace(/1\.70 +\S+/, "1.70 90.0"))).toContain("trace-unusable");
  });

  test("that lets go is marked at the first row behind the step and points to the run's reading", () => {
    const { message, finding } = findingOf(tracedRun(0.05), "let-go");
    const lines = tracedRun(0.05).split("\n");
    expect(lines[finding.span.line]?.trim()).toMatch(/^1\.30 /);
    expect(lines[finding.related[0]?.span.line ?? 0]?.trim()).toMatch(/^0\.500 /);
    expect(message).toMatch(
      /^flow lets go at 1\.3 s, at 27\.5 inH2O and rising: the apparent area steps down 4\.9 %/,
    );
  });
});

describe("letting go is held against the sweep of its run", () => {
  const swept = (rows: string) =>
    tracedRun(0.05)
      .replace("  repeat     0.4 %\n", "  repeat     0.4 %\n  quick      2.0 s\n")
      .replace(
        "depression[inH2O]  flow[cfm]\n     0.500               28.0      195.2\n",
        `depression[inH2O]  flow[cfm]  settle[s]\n${rows}`,
      );
  const said = (rows: string) => findingOf(swept(rows), "let-go").message;

  test("whose flat top hides it", () => {
    expect(
      said(
        "  0.300 28.0 160.0 5.1\n  0.400 28.0 194.8 6.0\n  0.500 28.0 195.2 7.4\n  0.600 28.0 195.4 6.8\n",
      ),
    ).toMatch(/traces\); the flat top of r1 hides it$/);
  });

  test("that falls back there too", () => {
    expect(
      said(
        "  0.300 28.0 160.0 1.1\n  0.400 28.0 194.8 1.2\n  0.500 28.0 185.2 1.4\n  0.600 28.0 185.4 1.4\n",
      ),
    ).toMatch(/traces\); r1 falls back here too$/);
  });

  test("that climbs on and shows nothing", () => {
    expect(
      said(
        "  0.300 28.0 160.0 1.1\n  0.400 28.0 184.8 1.2\n  0.500 28.0 195.2 1.4\n  0.600 28.0 205.4 1.4\n",
      ),
    ).toMatch(/traces\)$/);
  });
});

describe("a reading is early", () => {
  const record = (rows: string, trace = "") => `${SESSION.replace(/run r1[\s\S]*/, "")}run r1
        lift[in] depression[inH2O] flow[cfm] settle[s] read[s]
        ${rows}
${trace}`;
  const message = (rows: string, trace?: string) => findingOf(record(rows, trace), "read-early").message;

  test("before its own settle time, with what the missing depression costs", () => {
    // sqrt(27.8/28) = 0.99642 (handbook, trade: 0.36 %).
    expect(message("0.500 27.8 195.2 1.6 1.2")).toBe(
      "read after 1.2 s, 0.4 s before the depression held: 0.36 % less flow than at 28 inH2O, and the correction for that cannot be trusted",
    );
  });

  test("not at or behind it, nor where a time is missing, nor in a void row", () => {
    for (const row of [
      "0.500 28.0 195.2 1.6 1.6",
      "0.500 28.0 195.2 1.6 4",
      "0.500 28.0 195.2 - 1",
      "0.500 28.0 195.2 1.6 -",
    ]) {
      expect(codes(record(row))).toEqual([]);
    }
    expect(codes(record('0.500 28.0 195.2 1.6 1 void "early"'))).toEqual([]);
  });

  const traceOf = (drop: number) => tracedRun(drop).slice(tracedRun(drop).indexOf("trace 0.500"));

  test("before the trace of its lift is steady; where the area holds, the correction can be used", () => {
    expect(message("0.500 27.8 195.2 - 1.0", traceOf(0))).toMatch(
      /^read after 1\.0 s, 0\.7 s before the trace of this lift is steady: corrected .* can be used$/,
    );
  });

  test("and where the port lets go later, no correction mends it", () => {
    expect(message("0.500 27.8 195.2 - 1.0", traceOf(0.05))).toMatch(
      /still stands 5\.\d % above the steady flow, and no correction mends that$/,
    );
  });

  test("below the band, where the trace says when its depression was passed", () => {
    expect(message("0.500 27.0 195.2 - -", traceOf(0.05))).toMatch(
      /^read at 27 inH2O, which the trace of this lift passes 0\.7 s before it is steady: .* no correction mends that$/,
    );
  });
});

describe("a ladder", () => {
  const ladder = (flow: (inches: number) => number, columns = "", cells = "") =>
    `${SESSION}\n      ladder 0.500 in of r1\n        depression[inH2O] flow[cfm]${columns}\n${[
      6, 10, 14, 18, 22, 26, 28,
    ]
      .map((at) => `        ${at} ${flow(at).toFixed(1)}${cells}`)
      .join("\n")}\n`;
  const what = (fixture: string) => findingOf(fixture, "ladder-exponent");

  test("that goes with the square root, or as an ideal nozzle does, is in order", () => {
    expect(codes(ladder((at) => 36 * Math.sqrt(at)))).toEqual([]);
    expect(codes(ladder((at) => 38 * at ** 0.485))).toEqual([]);
  });

  test("that is steeper speaks of a leak", () => {
    // A port and a fine gap of a tenth of it whose flow goes with the depression itself.
    const found = what(ladder((at) => 36 * Math.sqrt(at) + 0.68 * at));
    expect(found.message).toMatch(
      /^flow goes with depression to the power 0\.5\d\d ± 0\.0\d\d; a port gives 0\.4\d\d to 0\.500$/,
    );
    expect(found.help).toContain("a fine gap leaks");
  });

  test("with a kink says where", () => {
    const found = what(ladder((at) => 36 * Math.sqrt(at) * (at > 18 ? (18 / at) ** 0.25 : 1)));
    expect(found.message).toContain("to the power 0.500 up to 18 inH2O and 0.2");
    expect(found.help).toMatch(/^above the kink the port lets go/);
  });

  test("on a bench at its limit says so", () => {
    const found = what(
      ladder((at) => 36 * Math.sqrt(at) * (at > 18 ? (18 / at) ** 0.25 : 1), " duty[%]", " 98"),
    );
    expect(found.help).toMatch(/^the motors are at their limit/);
  });

  test.each([
    ["of two steps", "8 100.0\n        12 120.0"],
    ["of one depression", "8 100.0\n        8 120.0\n        8 110.0"],
    ["without flow", "8 -\n        12 -\n        16 -"],
    ["below zero", "-8 100.0\n        -12 100.0\n        -16 100.0"],
  ])("%s says nothing", (_, rows) => {
    expect(
      codes(
        `${SESSION}\n      ladder 0.500 in of r1\n        depression[inH2O] flow[cfm]\n        ${rows}\n`,
      ),
    ).not.toContain("ladder-exponent");
  });
});

test("a log is looked for from the record's own folder, and marked where it is named", () => {
  checkRecord(`
      #- /a/main.headnote
      headnote 1
      bench north
        shows flow
        repeat 0.4 %
      session 2026-03-02
        bench north
        target 28 inH2O
        air 20 degC 1000 hPa 40 %RH
        leak none
      run r1
        lift[in] depression[inH2O] flow[cfm]
        0.500 28.0 195.2
      trace 0.500 in of r1
        log "../logs/t.csv" time "t" s depression "dp" inH2O
      # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[trace-unusable]
  `);
});
