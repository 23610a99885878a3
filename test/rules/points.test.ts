// What single readings are judged by: depression, repeats, drift, what a valve can pass, and what a run should reach.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import {
  BENCH,
  checkRecord,
  codesOf,
  findingOf,
  findingsOf,
  PORT,
  record,
  SESSION,
} from "../kit/check-record.ts";

function checkCodes(fixture: string, codes: readonly string[]): void {
  expect(codesOf(fixture)).toEqual(codes);
}

/** Rows at the target, one lift after another. */
const rows = (...points: readonly (readonly [lift: string, flow: string])[]) =>
  points.map(([lift, flow]) => `${lift} 28.0 ${flow}`);

describe("off target", () => {
  test.each([
    ["27.8", []],
    ["28.2", []],
    ["27.7", ["off-target"]],
    ["28.3", ["off-target"]],
  ])("%s inH2O for 28 within 0.2", (depression, codes) => {
    checkCodes(record({ rows: [`0.100 ${depression} 55.0`] }), codes);
  });

  test("the band is one percent of the target where nobody states one", () => {
    const bench = ["shows flow", "repeat 0.4 %"];
    checkCodes(record({ bench, rows: ["0.100 27.72 55.0"] }), []);
    checkCodes(record({ bench, rows: ["0.100 27.71 55.0"] }), ["off-target"]);
  });

  test("the run's band goes before the session's, and that before the bench's", () => {
    const session = [...SESSION, "within 0.5 inH2O"];
    checkCodes(record({ session, rows: ["0.100 27.5 55.0"] }), []);
    checkCodes(record({ session, run: ["within 0.1 inH2O"], rows: ["0.100 27.8 55.0"] }), ["off-target"]);
  });

  test("the cell is marked, and the units may differ from the target's", () => {
    // 28 inH2O are 6974.49 Pa (249.08891 Pa each), 0.2 inH2O are 49.82 Pa.
    checkRecord(`
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
        lift[mm] depression[Pa] flow[L/s]
        2.0      6925           26.0
        4.0      6924           51.0
      #          ^^^^ warning[off-target]
        6.0      7025           70.0
      #          ^^^^ warning[off-target]
        8.0      -              80.0
    `);
  });

  test("says by how much, in the target's unit", () => {
    const { message, help } = findingOf(record({ rows: ["0.100 27.2 55.0"] }), "off-target");
    expect(message).toBe(
      "the depression, 27.2 inH2O, is 0.8 inH2O off the target of 28 inH2O (band 0.2 inH2O)",
    );
    // sqrt(28/27.2) = 1.0146, by hand.
    expect(help).toBe("hold the target and read again; uncorrected this is 1.5 % in flow");
  });

  // sqrt(28/27.2) = 1.0146 and sqrt(25/27.2) = 0.9587, by hand.
  test.each([
    ["28 inH2O", "1.5 %"],
    ["25 inH2O", "4.1 %"],
  ])("says of a display that scales to %s itself what it has allowed for", (at, flow) => {
    const bench = [`shows flow at ${at}`, "repeat 0.4 %"];
    const { help } = findingOf(record({ bench, rows: ["0.100 27.2 55.0"] }), "off-target");
    expect(help).toBe(`hold the target and read again; the display has scaled to ${at}, by ${flow} in flow`);
  });
});

describe("void rows", () => {
  test("get no findings of their own, whatever stands in them", () => {
    const good = rows(["0.100", "55.0"], ["0.200", "108.0"], ["0.300", "150.0"]);
    for (const wrong of [
      "0.200 27.0 108.0",
      "0.200 28.0 1080",
      "0.200 28.0 250.0",
      "0.200 28.0 5.0",
      "0.200 28.0 101.0",
    ])
      checkCodes(record({ rows: [...good.slice(0, 2), `${wrong} void "slipped"`, ...good.slice(2)] }), []);
  });

  test("take no part in what other rows are judged by", () => {
    const kept = rows(["0.100", "55.0"], ["0.200", "108.0"], ["0.300", "150.0"]);
    const voided = [
      ...kept.slice(0, 2),
      '0.200 28.0 120.0 void "gasket"',
      ...kept.slice(2),
      '0.100 28.0 70.0 void ""',
    ];
    checkCodes(record({ rows: voided }), []);
  });
});

describe("repeats", () => {
  // Range of two of one normal, 95 % point 2.772 (from memory, Tippett); 0.4 % gives 1.109 % of the mean.
  test.each([
    ["109.19", []],
    ["109.22", ["repeats-disagree"]],
  ])("of 108.00 and %s cfm", (flow, codes) => {
    checkCodes(record({ rows: rows(["0.100", "55.00"], ["0.200", "108.00"], ["0.200", flow]) }), codes);
  });

  test("of three may be further apart than those of two: 3.314 times the deviation", () => {
    const three = (last: string) => rows(["0.200", "108.00"], ["0.200", "108.70"], ["0.200", last]);
    checkCodes(record({ rows: three("109.40") }), []);
    checkCodes(record({ rows: three("109.50") }), ["repeats-disagree"]);
  });

  test("on the way up and on the way down are not each other's", () => {
    checkCodes(
      record({ rows: rows(["0.200", "108.0"], ["0.300", "150.0"], ["0.200", "112.0"], ["0.100", "55.0"]) }),
      ["direction-dependent"],
    );
  });

  test("a run that ends where it began is judged by its drift alone", () => {
    const sweep = (last: string) =>
      record({ rows: rows(["0.100", "55.00"], ["0.200", "108.00"], ["0.100", last]) });
    // 1.96 sqrt(2) 0.4 % = 1.109 %.
    checkCodes(sweep("55.60"), []);
    checkCodes(sweep("55.62"), ["drift"]);
    checkCodes(sweep("54.38"), ["drift"]);
    const { finding } = findingOf(sweep("55.62"), "drift");
    expect(finding.related.map(({ message }) => message)).toEqual(["the first reading"]);
  });

  test("a single lift read over and over has repeats and no drift", () => {
    checkCodes(record({ rows: rows(["0.200", "108.0"], ["0.200", "110.0"]) }), ["repeats-disagree"]);
  });
});

describe("impossible", () => {
  test("a flow is judged by what its own uncertainty leaves of it", () => {
    // At 0.200 in the gap is the limit: the flow at which its Cd is one, less and more than U.
    const codes = (flow: number, bench: readonly string[]) =>
      codesOf(record({ bench, rows: [`0.200 28.0 ${flow.toFixed(1)}`] }));
    let edge = 100;
    while (!codes(edge, BENCH).includes("impossible")) edge += 0.1;
    expect(codes(edge - 0.2, BENCH)).not.toContain("impossible");
    const vague = BENCH.map((line) => line.replace("repeat 0.4 %", "repeat 3 %"));
    expect(codes(edge + 1, BENCH)).toContain("impossible");
    expect(codes(edge + 1, vague)).not.toContain("impossible");
  });

  test("where the gap is not known the smaller of curtain and throat is the limit", () => {
    const bare = ["side intake", "valve 2.020 in", "throat 1.780 in", "stem 0.342 in"];
    const at = (lift: string, flow: string) =>
      findingsOf(record({ port: bare, rows: [`${lift} 28.0 ${flow}`] })).map(({ message }) => message);
    expect(at("0.100", "150.0").join()).toContain("the curtain is");
    expect(at("0.700", "500.0").join()).toContain("the throat is");
  });
});

describe("Cd on the curtain", () => {
  test("is judged below L/D 0.3 only", () => {
    // 0.606 in of lift on 2.020 in are L/D 0.300.
    checkCodes(record({ rows: ["0.605 28.0 60.0"] }), ["implausible-cd"]);
    checkCodes(record({ rows: ["0.607 28.0 60.0"] }), []);
  });

  test("has limits that the workspace sets", () => {
    const config = { ...DEFAULT_CONFIG, limits: { ...DEFAULT_CONFIG.limits, cdHighest: 0.6 } };
    expect(codesOf(record({ rows: ["0.100 28.0 55.0"] }), config)).toEqual(["implausible-cd"]);
  });
});

describe("what a run is to reach", () => {
  const reaching = (expected: string, flow: string) =>
    codesOf(record({ run: [`expect flow ${expected}`], rows: rows(["0.100", "55.0"], ["0.200", flow]) }));

  test.each([
    ["101.0", []],
    ["99.0", []],
    ["101.1", ["expectation-missed"]],
    ["98.9", ["expectation-missed"]],
  ])("%s cfm for 100 within 1 %% is inclusive", (flow, codes) => {
    expect(reaching("100 cfm at 0.200 in within 1 %", flow)).toEqual(codes);
  });

  test("lies between two stations on the line between them", () => {
    // Halfway between 55 and 108 cfm: 81.5.
    expect(reaching("81.5 cfm at 0.150 in within 0.1 %", "108.0")).toEqual([]);
  });

  test("above the last reading it is missed, and says that there is none", () => {
    const fixture = record({
      run: ["expect flow 120 cfm at 0.250 in within 1 %"],
      rows: rows(["0.100", "55.0"], ["0.200", "108.0"]),
    });
    expect(findingOf(fixture, "expectation-missed").message).toMatch(/where the run has no reading$/);
  });

  test("each line is judged by itself and marked whole", () => {
    checkRecord(`
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
        expect flow 60 cfm at 0.100 in within 1 %
        expect flow 70 cfm at 0.100 in within 1 %
      # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[expectation-missed]
        lift[in] depression[inH2O] flow[cfm]
        0.100    28.0              60.0
    `);
  });
});

describe("geometry", () => {
  test.each(["valve", "seat", "throat", "stem"])("a port without its %s is told of once a run", (keyword) => {
    const port = PORT.filter((line) => line.split(" ")[0] !== keyword);
    const found = findingsOf(record({ port, rows: rows(["0.100", "55.0"], ["0.200", "108.0"]) }));
    const codes = found.map(({ finding }) => finding.code).filter((code) => code !== "missing-line");
    expect(codes).toEqual(["no-geometry"]);
  });

  test("a seat without its width is told of, and so are sizes that fit no valve", () => {
    const port = (seat: string) => PORT.map((line) => (line.startsWith("seat") ? seat : line));
    const one = rows(["0.100", "55.0"]);
    expect(findingOf(record({ port: port("seat 45 deg"), rows: one }), "no-geometry").message).toContain(
      "width",
    );
    const wide = record({ port: port("seat 45 deg width 2 in"), rows: one });
    expect(findingOf(wide, "no-geometry").message).toContain("fit no valve");
  });
});

test("a display that scales twice is told of once, where its rows follow the root of their depression", () => {
  const bench = ["shows flow at 28 inH2O", "repeat 0.4 %", "within 0.2 inH2O"];
  // 118.0 cfm on the line between 56 and 180; sqrt(22.4/28) = 0.8944 and sqrt(25.2/28) = 0.9487, by hand.
  const sweep = (second: string, third: string) =>
    record({
      bench,
      rows: ["0.100 28.0 56.0", `0.150 22.4 ${second}`, `0.250 25.2 ${third}`, "0.300 28.0 160.0"],
    });
  const unscaled = codesOf(sweep("73.3", "127.1"));
  expect(unscaled.filter((code) => code === "corrected-twice")).toHaveLength(1);
  expect(codesOf(sweep("82.0", "134.0"))).not.toContain("corrected-twice");
});

test("no reading makes the judging throw, and no message says undefined or NaN", () => {
  const cell = fc.oneof(
    fc.constantFrom("-", "0", "-1", "0.0000001", "999999999999", "1/3"),
    fc.double({ min: 0, max: 600, noNaN: true }).map((value) => value.toFixed(2)),
  );
  const row = fc
    .tuple(cell, cell, cell, fc.constantFrom("", ' "seen"', ' void "why"'))
    .map((parts) => parts.join(" "));
  const shows = fc.constantFrom(
    "shows flow",
    "shows flow at 28 inH2O in isa",
    "shows percent",
    "shows signal",
    "shows drop",
  );
  fc.assert(
    fc.property(fc.array(row, { maxLength: 12 }), shows, (table, shown) => {
      const bench = [shown, "range low 150 cfm at 28 inH2O", "element orifice bore 50 mm", "meter upstream"];
      const fixture = record({
        bench,
        session: [...SESSION, "reference isa", "quote 25 inH2O"],
        rows: table,
      });
      for (const { message, help } of findingsOf(fixture))
        expect(`${message} ${help}`).not.toMatch(/undefined|NaN|Infinity/);
    }),
    { numRuns: 60 },
  );
});
