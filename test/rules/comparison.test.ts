// How a run is told that stands beside another: its baseline, or the same stage on another bench.
import { describe, expect, test } from "vitest";
import { checkRecord, codesOf, findingOf, findingsOf } from "../kit/check-record.ts";
import { runsText } from "../kit/two-runs.ts";

type Points = Parameters<typeof runsText>[0][number]["points"];

const BASELINE: Points = [
  [0.1, 55],
  [0.2, 108],
  [0.3, 150],
];

/** A record of a baseline and a stage over it. */
function stages(own: Points, lines: readonly string[] = [], bench: "north" | "south" = "north"): string {
  const stage = ['stage "ported"', "baseline r1", ...lines];
  return runsText([{ points: BASELINE }, { points: own, lines: stage, bench }]).replace(
    'stage "as cast"\nstage "ported"',
    'stage "ported"',
  );
}

const scaled = (factor: number): Points => BASELINE.map(([lift, flow]) => [lift, flow * factor] as const);

describe("a baseline that was read in another set-up", () => {
  test("is named at the baseline line, with what differs as both state it", () => {
    const fixture = stages(scaled(1.05), ["entry bare", "adapter 4.030 in"]);
    expect(codesOf(fixture)).toEqual(["not-comparable"]);
    const { finding, message, severity } = findingOf(fixture, "not-comparable");
    expect(fixture.split("\n")[finding.span.line]).toBe("baseline r1");
    expect(severity).toBe("warning");
    expect(message).toBe(
      "r2 and its baseline r1 were not read alike: adapter (4.030 in, there not stated), entry (bare, there clay)",
    );
  });

  test("asks for another reading only where one is needed", () => {
    const help = (lines: readonly string[]) => findingOf(stages(scaled(1.05), lines), "not-comparable").help;
    expect(help(["entry bare"])).toMatch(/^read one of them again/);
    expect(help(["reference din-1343"])).toMatch(
      /^write the same line into both sessions, such as: reference isa;/,
    );
    expect(help(["reference din-1343", "quote 25 inH2O"])).toContain("quote 28 inH2O, and: reference isa;");
    expect(help(["reference din-1343", "entry bare"])).toMatch(/^read one of them again/);
  });

  test("says nothing of the gain, which is not the port's alone", () => {
    expect(codesOf(stages(scaled(1.001), ["entry bare"]))).toEqual(["not-comparable"]);
  });

  test("in an included file is held against the conditions of that file", () => {
    const fixture = (entry: string) => `
      headnote 1
      include "first.headnote"
      session 2026-03-03
        bench north
        port p1
        target 28 inH2O
        reference isa
        air 20 degC 1000 hPa 40 %RH
        leak none
        entry clay
      run r2
        baseline r1
      ${entry === "bare" ? "# ^^^^^^^^^^^ warning[not-comparable]" : "#"}
        lift[in] depression[inH2O] flow[cfm]
        0.100    28.0              58.0
        0.200    28.0              115.0
      #- /first.headnote
      headnote 1
      bench north
        shows flow
        repeat 0.4 %
      port p1
        side intake
        valve 2.020 in
        seat 45 deg width 0.060 in
        throat 1.780 in
        stem 0.342 in
      session 2026-03-02
        bench north
        port p1
        target 28 inH2O
        reference isa
        air 10 degC 1010 hPa 20 %RH
        leak none
        entry ${entry}
      run r1
        lift[in] depression[inH2O] flow[cfm]
        0.100    28.0              55.0
        0.200    28.0              108.0
    `;
    checkRecord(fixture("clay"));
    checkRecord(fixture("bare"));
  });
});

describe("a gain within the noise", () => {
  test("is one of which neither the mean nor a third is resolved", () => {
    // Three stations weighted 1/4, 1/2, 1/4: sqrt(13.75^2 + 54^2 + 37.5^2)/105.25 · 0.4 % · 1.96 · √2 = 0.709 %, by hand.
    expect(codesOf(stages(scaled(1.0069)))).toEqual(["gain-within-noise"]);
    expect(codesOf(stages(scaled(0.9932)))).toEqual(["gain-within-noise"]);
    expect(codesOf(stages(scaled(1.0072)))).toEqual([]);
    const low: Points = [[0.1, 56.5], ...scaled(1).slice(1)];
    expect(codesOf(stages(low))).toEqual([]);
  });

  test("says how much, over which lifts, against what, and how many readings would tell", () => {
    const { message, help, severity } = findingOf(stages(scaled(1.004)), "gain-within-noise");
    expect(severity).toBe("hint");
    expect(message).toBe(
      "the gain over r1 is within the noise: +0.40 % in the mean over lift 0.100 to 0.300 in, where chance alone gives 0.71 %",
    );
    // (0.709/0.4)^2 = 3.1, so four times.
    expect(help).toBe("4 times as many readings in both runs would resolve a gain of this size");
    expect(findingOf(stages(scaled(1)), "gain-within-noise").help).toMatch(/^take the two as equal/);
  });

  test("between two benches counts their scales, which no number of readings makes smaller", () => {
    const across = stages(scaled(1.012), [], "south");
    expect(findingOf(across, "gain-within-noise").help).toMatch(/^take the two as equal/);
    expect(codesOf(stages(scaled(1.02), [], "south"))).toEqual([]);
  });
});

describe("lifts that the baseline does not have", () => {
  test("are named by whether they lie between its lifts or beyond them", () => {
    const own: Points = [...scaled(1.05), [0.35, 180], [0.4, 190]].toSpliced(1, 0, [0.15, 85]) as Points;
    const fixture = stages(own);
    expect(codesOf(fixture)).toEqual(["lifts-not-shared"]);
    expect(findingOf(fixture, "lifts-not-shared").message).toBe(
      "the baseline r1 was not read at 0.150 in (between its lifts: a gain there stands on a straight line) and 0.350, 0.400 in (beyond its lifts: no gain there)",
    );
  });

  test("are counted where there are many", () => {
    const own: Points = [0.31, 0.32, 0.33, 0.34, 0.35].map((lift, index) => [lift, 152 + 2 * index] as const);
    const { message } = findingOf(stages([...scaled(1.05).slice(0, 2), ...own]), "lifts-not-shared");
    expect(message).toContain("5 lifts (beyond its lifts");
  });

  test("do not matter the other way round", () => {
    expect(codesOf(stages(scaled(1.05).slice(0, 2)))).toEqual([]);
  });
});

describe("a fall-back that another bench hides", () => {
  const rising: Points = [
    [0.2, 108, 1.3],
    [0.3, 150, 1.4],
    [0.4, 180, 1.5],
  ];
  const falling: Points = [...rising, [0.5, 172, 2.4]];
  const flat: Points = [...rising, [0.5, 180.4, 7.8]];
  const codes = (fixture: string) => codesOf(fixture).filter((code) => code !== "fall-back");

  test("is told once in a file of both, at the run that hides it", () => {
    const fixture = runsText([{ points: falling }, { points: flat, bench: "south" }]);
    expect(codes(fixture)).toEqual(["hidden-fall-back"]);
    const { finding, message } = findingOf(fixture, "hidden-fall-back");
    const lines = fixture.split("\n");
    expect(lines[finding.span.line]).toContain("180.4");
    expect(finding.related.map(({ file, span }) => `${file} ${lines[span.line]?.split(" ")[2]}`)).toEqual([
      "/main.headnote 172.0000",
    ]);
    // (180 - 172)/180 = 4.4 %.
    expect(message).toBe(
      "north (r1) falls back 4.4 % after 0.4 in, and south (r2) only goes flat, from 0.4 in to 0.5 in (it climbs 0.22 % between the same lifts; chance alone leaves two benches up to 1.3 % apart); they settled in 2.4 s and 7.8 s there",
    );
    expect(codes(runsText([{ points: flat, bench: "south" }, { points: falling }]))).toEqual([
      "hidden-fall-back",
    ]);
  });

  test("is told once of all runs on the other bench, of the last that shows it", () => {
    const fixture = runsText([{ points: falling }, { points: falling }, { points: flat, bench: "south" }]);
    expect(codes(fixture)).toEqual(["hidden-fall-back"]);
    expect(findingOf(fixture, "hidden-fall-back").message).toMatch(/^north \(r2\)/);
    // A later run that did not let go does not take back what an earlier one has shown.
    const once = runsText([{ points: falling }, { points: flat }, { points: flat, bench: "south" }]);
    expect(codes(once)).toEqual(["hidden-fall-back"]);
    expect(findingOf(once, "hidden-fall-back").message).toMatch(/^north \(r1\)/);
  });

  test("is told of the other bench where the run that shows it stands behind others of that bench", () => {
    const fixture = runsText([
      { points: flat, bench: "south" },
      { points: flat },
      { points: falling },
      { points: flat },
    ]);
    expect(codes(fixture)).toEqual(["hidden-fall-back"]);
  });

  test("is none of another stage, cylinder or set-up", () => {
    const other = (line: string) =>
      codes(runsText([{ points: falling }, { points: flat, bench: "south", lines: [line] }]));
    expect(other("cylinder 4")).toEqual([]);
    expect(other("entry bare")).toEqual([]);
    const staged = runsText([{ points: falling }, { points: flat, bench: "south" }]);
    expect(codes(staged.replace(/stage "as cast"(?![\s\S]*stage)/, 'stage "ported"'))).toEqual([]);
  });

  test("is also told where the included file has the bench that hides it", () => {
    const lines = runsText([{ points: flat, bench: "south" }]);
    const [head = ""] = lines.split("run r1");
    const fixture = `${head.replace("headnote 1", 'headnote 1\ninclude "slow.headnote"').replace(/bench north[\s\S]*?(?=session)/, "")}run r2
bench north
stage "as cast"
lift[in] depression[inH2O] flow[cfm] settle[s]
${falling.map(([lift, flow, settle]) => `${lift} 28.0 ${flow} ${settle}`).join("\n")}
#- /slow.headnote
${lines}`;
    expect(codes(fixture)).toEqual(["hidden-fall-back"]);
    const { finding, message } = findingOf(fixture, "hidden-fall-back");
    expect(finding.related[0]?.file).toBe("/slow.headnote");
    expect(message).toMatch(/^north \(r2\) falls back 4\.4 % after 0\.4 in, and south \(r1\) only goes flat/);
    expect(findingsOf(fixture, "/slow.headnote")).toEqual([]);
  });

  test("is told of as many runs as there are without laying each beside every other", () => {
    const many = Array.from({ length: 60 }, () => ({ points: flat, bench: "south" as const }));
    const fixture = runsText([...many, { points: falling }]);
    expect(codes(fixture)).toHaveLength(60);
  });
});
