// What the records of a shop say of a bench, from records to numbers.
import { describe, expect, test } from "vitest";
import type { BenchReport } from "../../../../shared/calc/bench/bench-report.ts";
import { BENCH_SHOP, benchSession, pageOf, pagesOf } from "../../../kit/bench-pages.ts";
import { checkClose } from "../close.ts";

const HEAD = "lift[in] depression[inH2O] flow[cfm] settle[s]";

/** The report of one bench over sessions, each given by its blocks. */
function reportOf(...sessions: readonly string[]): BenchReport {
  const records = Object.fromEntries(sessions.map((text, index) => [`s${index}.headnote`, text]));
  return pageOf({ "shop.headnote": BENCH_SHOP, ...records }).report;
}

const run = (id: string, rows: readonly string[], lines = "", head = HEAD) =>
  `run ${id}\n${lines}\n${head}\n${rows.join("\n")}\n`;

describe("settle times", () => {
  test("are gathered by lift over all runs, voids left out", () => {
    const { settle } = reportOf(
      benchSession({
        blocks: run("a", ["0.1 28 50 1.0", "0.2 28 90 2.0", '0.2 28 90 9.0 void "no"'], 'stage "s"'),
      }),
      benchSession({ date: "2026-03-09", blocks: run("b", ["0.1 28 50 1.4", "0.2 28 91 -"]) }),
    );
    expect(settle).toMatchObject({ count: 3, median: 1.4, slowest: 2 });
    expect(settle?.byLift.map(({ count, median, slowest }) => [count, median, slowest])).toEqual([
      [2, 1.2, 1.4],
      [1, 2, 2],
    ]);
  });

  test("are missing where nobody timed", () => {
    expect(reportOf(benchSession({ blocks: run("a", ["0.1 28 50 -"]) })).settle).toBeUndefined();
  });
});

test("a sweep's time is that of its readings, voids and repeats told apart, by side", () => {
  const head = "lift[in] depression[inH2O] flow[cfm] settle[s] read[s]";
  const { sweeps } = reportOf(
    benchSession({
      blocks: `${run(
        "a",
        [
          "0.1 28 50 1 2",
          "0.2 28 90 1 3",
          "0.3 28 120 2 4",
          '0.4 28 120 1 5 void "no"',
          "0.4 28 140 2 6",
          "0.4 28 140 1 5",
        ],
        "",
        head,
      )}${run("b", ["0.1 28 40 3", "0.2 28 70 4"], "port ex")}`,
    }),
  );
  const [intake, exhaust] = sweeps;
  expect(intake).toMatchObject({ side: "intake", runs: 1, rows: 6, median: 25, longest: 25, perRow: 4.5 });
  checkClose(intake?.voids, 5 / 25, 1e-12);
  checkClose(intake?.repeats, 5 / 25, 1e-12);
  checkClose(intake?.low, 5 / 25, 1e-12);
  checkClose(intake?.high, 16 / 25, 1e-12);
  checkClose(intake?.waiting, (1 + 2 + 2 + 4 + 4 + 4) / 25, 1e-12);
  expect(exhaust).toMatchObject({ side: "exhaust", median: 7, rows: 2 });
  expect(exhaust?.waiting).toBeUndefined();
});

describe("repeatability", () => {
  test("is pooled from points and check plates and laid beside the claim", () => {
    // Cells of two about their mean: relative deviations of 1/100 and 2/200, so s² is (2·0.0001)/2 each (n - 1 = 1).
    const { within } = reportOf(
      benchSession({
        blocks: `${run("a", ["0.1 28 99 1", "0.1 28 101 1", "0.2 28 150 1"])}plate-check p1\ndepression[inH2O] flow[cfm]\n28 198\n28 202\n`,
      }),
    );
    expect(within).toMatchObject({ degreesOfFreedom: 2, cells: 2, plateCells: 1, claimed: 0.004 });
    checkClose(within?.deviation, Math.sqrt(0.0002), 1e-9);
    expect(within?.verdict).toBe("repeats-worse");
  });

  test.each([
    [[100, 100.4, 99.6, 100.3, 99.7], "kept"],
    [[100, 100.01, 99.99, 100.01, 99.99], "repeats-better"],
    [[100, 103, 97, 102, 98], "repeats-worse"],
  ] as const)("of %j is, against 0.4 %%: %s", (flows, verdict) => {
    const rows = flows.map((flow) => `0.1 28 ${flow} 1`);
    expect(reportOf(benchSession({ blocks: run("a", rows) })).within?.verdict).toBe(verdict);
  });
});

describe("over days", () => {
  const stage = (flow: number, more = "") =>
    run("a", [`0.1 28 ${flow} 1`], `cylinder 1\nstage "ported"\n${more}`);

  test("the same port and stage in another session, at the lifts that both have", () => {
    const { between } = reportOf(
      benchSession({ blocks: stage(99) }),
      benchSession({ date: "2026-04-02", blocks: stage(101) }),
    );
    // Nothing is repeated: the block's 0.4 % stands for it. sd² = 2·(1/100)².
    expect(between).toMatchObject({ levels: 1, subjects: 1, sessions: 2 });
    checkClose(between?.deviation, Math.sqrt(0.0002), 1e-9);
    checkClose(between?.between, Math.sqrt(0.0002 - 0.004 ** 2), 1e-9);
    checkClose(between?.widest.range, 0.02, 1e-9);
  });

  test("not another stage, another set-up, or one session alone", () => {
    const first = benchSession({ blocks: stage(99) });
    expect(reportOf(first).between).toBeUndefined();
    const other = { date: "2026-04-02" };
    expect(
      reportOf(first, benchSession({ ...other, blocks: stage(101, "entry clay") })).between,
    ).toBeUndefined();
    const another = stage(101).replace("ported", "as cast");
    expect(reportOf(first, benchSession({ ...other, blocks: another })).between).toBeUndefined();
  });
});

describe("check plates", () => {
  const plate = (date: string, flow: number) =>
    benchSession({ date, blocks: `plate-check p1\ndepression[inH2O] flow[cfm]\n28 ${flow}\n` });

  test("have limits and a drift by their dates, not by the files' order", () => {
    const { plates } = reportOf(
      plate("2026-07-01", 202),
      plate("2026-01-01", 200),
      plate("2026-04-01", 201),
      plate("2026-10-01", 203),
    );
    expect(plates).toHaveLength(1);
    expect(plates[0]?.points.map(({ difference }) => Math.round(1000 * difference))).toEqual([0, 5, 10, 15]);
    checkClose(plates[0]?.limits?.centre, 0.0075, 1e-9);
    checkClose(plates[0]?.limits?.high, 0.0075 + 2.66 * 0.005, 1e-9);
    // 1.5 % in 273 days.
    expect(plates[0]?.drift?.perYear).toBeCloseTo((0.015 / 273) * 365.25, 3);
    expect(plates[0]?.drift?.isResolved).toBe(true);
  });

  test("that jump are outside", () => {
    const days = ["01", "02", "03", "04", "05", "06", "07", "08", "09", "10"];
    const history = reportOf(
      ...days.map((day, i) => plate(`2026-01-${day}`, i === 9 ? 210 : 200 + (i % 2) * 0.4)),
    );
    expect(history.plates[0]?.points.map(({ isOut }) => isOut).indexOf(true)).toBe(9);
  });
});

test("leaks stand once a session, at the depression of most, by their own exponent", () => {
  const { leak } = reportOf(
    benchSession({ session: ["leak 4 cfm at 10 inH2O exponent 0.65"], blocks: run("a", []) + run("b", []) }),
    benchSession({ date: "2026-03-03", session: ["leak 2 cfm at 28 inH2O"], blocks: run("c", []) }),
    benchSession({ date: "2026-03-04", session: ["leak 1 cfm at 28 inH2O"], blocks: run("d", []) }),
  );
  const cfm = 0.3048 ** 3 / 60;
  // Handbook 4.5: 4.0 cfm at 10 inH2O are 7.8111092 at 28 with an exponent of 0.65.
  expect(leak?.points.map(({ flow }) => Number((flow / cfm).toFixed(5)))).toEqual([7.81111, 2, 1]);
  checkClose(leak?.median, 2 * cfm, 1e-9);
});

test("motor duty is told by flow", () => {
  const head = "lift[in] depression[inH2O] flow[cfm] duty[%]";
  const { duty } = reportOf(
    benchSession({ blocks: run("a", ["0.1 28 50 20", "0.2 28 55 30", "0.5 28 210 70"], "", head) }),
  );
  expect(duty.map(({ count, median, highest }) => [count, median, highest])).toEqual([
    [2, 0.25, 0.3],
    [1, expect.closeTo(0.7), expect.closeTo(0.7)],
  ]);
});

describe("suggested lines", () => {
  const lineOf = (report: BenchReport | undefined, keyword: string) =>
    report?.lines.find((line) => line.keyword === keyword);

  test("are made from enough readings only", () => {
    const few = reportOf(benchSession({ blocks: run("a", ["0.1 28 50 1", "0.1 28 51 1"]) }));
    expect(few.lines.map(({ value }) => value)).toEqual([undefined, undefined, undefined, undefined]);
    expect(lineOf(few, "repeat")?.reason).toEqual({ kind: "too-few", have: 1, need: 4 });
  });

  test("quick is measured by the quickest bench of the records", () => {
    const rows = (settle: number) =>
      Array.from({ length: 6 }, (_, i) => `0.${i + 1} 28 ${50 + 20 * i} ${settle}`);
    const slow = `${BENCH_SHOP.replace("north", "slow").replace(/plate[\s\S]*/, "")}session 2026-03-02\nbench slow\n`;
    const pages = pagesOf({
      "shop.headnote": BENCH_SHOP,
      "a.headnote": benchSession({ blocks: run("a", rows(1.4)) }),
      "b.headnote": slow + run("b", rows(8)),
    });
    const [north, other] = pages.map(({ report }) => report);
    checkClose(lineOf(north, "quick")?.value, 2.1, 1e-12);
    checkClose(lineOf(other, "settle")?.value, 8, 1e-12);
    checkClose(lineOf(other, "quick")?.value, 2.1, 1e-12);
    expect(lineOf(other, "quick")?.reason).toMatchObject({ kind: "quickest", bench: "north" });
  });

  test("within is what 95 % of the depressions hold, never less than a written digit", () => {
    const rows = (depressions: readonly string[]) =>
      depressions.map((depression, i) => `0.${10 + i} ${depression} ${50 + i} 1`);
    const steady = reportOf(
      benchSession({ blocks: run("a", rows(Array.from({ length: 12 }, () => "28.0"))) }),
    );
    checkClose(lineOf(steady, "within")?.value, 0.1 * 249.08891, 1e-9);
    const loose = reportOf(
      benchSession({
        blocks: run("a", rows(Array.from({ length: 21 }, (_, i) => (28 + 0.02 * i).toFixed(2)))),
      }),
    );
    checkClose(lineOf(loose, "within")?.value, 0.38 * 249.08891, 1e-6);
  });
});

test("two benches of one name in two files are two benches", () => {
  const record = `${BENCH_SHOP}session 2026-03-02\nbench north\n${run("a", ["0.1 28 50 1"])}`;
  expect(pagesOf({ "a/x.headnote": record, "b/x.headnote": record })).toHaveLength(2);
});
