import { describe, expect, test } from "vitest";
import { inlayHints } from "../../server/service/inlay-hints.ts";
import { open } from "../kit/service.ts";

const NOTHING = { flow: false, cd: false, gain: false };
const HEAD = "lift[in]  depression[inH2O]  flow[cfm]";

interface Pair {
  readonly benches?: string;
  readonly before?: string;
  readonly after?: string;
  readonly was: string;
  readonly is: string;
}

/** The gains of run `is` over run `was`, row by row. */
function gains({
  benches = "bench b\n  shows flow\n  repeat 0.5 %",
  before = "",
  after = "",
  was,
  is,
}: Pair) {
  const { analysis } = open(`headnote 1
${benches}
session 2026-03-02
  bench b
run was
  ${before}
  ${HEAD}
${was}
run is
  ${after}
  baseline was
  ${is.includes("[") ? "" : HEAD}
${is}
`);
  const [baseline] = analysis.runs;
  const kinds = { ...NOTHING, gain: true };
  return inlayHints(analysis, 0, 1000, kinds, ({ setup }) =>
    setup.run.id === "is" ? baseline?.result : undefined,
  ).map(({ label }) => label);
}

describe("each kind of hint", () => {
  const { analysis } = open(`headnote 1
bench b
  shows flow
port p
  valve 2.020 in
session 2026-03-02
  bench b
  port p
run r
  ${HEAD}
  0.300  28.0  150.0
  0.400  28.0  -
  0.500  28.0  180.0  void "slipped"
`);
  const labels = (kinds: Partial<typeof NOTHING>) =>
    inlayHints(analysis, 0, 100, { ...NOTHING, ...kinds }, () => undefined).map(({ label }) => label);

  test("can be had by itself, and only on rows that give a result and count", () => {
    expect(labels({ flow: true })).toEqual([expect.stringMatching(/^150\.0 ± \d\.\d cfm$/)]);
    expect(labels({ cd: true })).toEqual([expect.stringMatching(/^Cd curtain 0\.\d{3}$/)]);
    expect(labels({ gain: true })).toEqual([]);
  });

  test("says what its numbers are", () => {
    const all = inlayHints(analysis, 0, 100, { flow: true, cd: true, gain: true }, ({ setup }) =>
      setup.run.id === "r" ? analysis.runs[0]?.result : undefined,
    );
    expect(all.map(({ meaning }) => meaning.split("\n"))).toEqual([
      [
        "corrected flow at 28 inH2O, air of the day, ± its uncertainty (k = 2)",
        "discharge coefficient on the curtain area",
        "gain over r at this lift, which chance alone can make",
      ],
    ]);
  });

  test("is made for the lines that were asked for", () => {
    const kinds = { ...NOTHING, flow: true };
    expect(inlayHints(analysis, 0, 9, kinds, () => undefined)).toEqual([]);
    expect(inlayHints(analysis, 10, 10, kinds, () => undefined)).toHaveLength(1);
    expect(inlayHints(analysis, 11, 100, kinds, () => undefined)).toEqual([]);
  });
});

describe("gain over the baseline", () => {
  test("is noise up to 1.96 standard deviations of the difference", () => {
    // 1.96 · 0.5 % · sqrt(1/1 + 1/1) = 1.386 %, by hand.
    expect(gains({ was: "  0.300  28.0  200.0", is: "  0.300  28.0  202.7" })).toEqual(["+1.4 % (noise)"]);
    expect(gains({ was: "  0.300  28.0  200.0", is: "  0.300  28.0  197.2" })).toEqual(["-1.4 %"]);
  });

  test("of averaged readings is resolved sooner", () => {
    // 1.96 · 0.5 % · sqrt(1/2 + 1/2) = 0.98 %, by hand.
    const twice = (flow: string) => `  0.300  28.0  ${flow}\n  0.300  28.0  ${flow}`;
    expect(gains({ was: twice("200.0"), is: twice("202.0") })).toEqual(["+1.0 %", "+1.0 %"]);
  });

  test("is there at the same lift only, whatever its unit", () => {
    const metric = "  lift[mm]  depression[inH2O]  flow[cfm]\n  7.62  28.0  220.0\n  7.63  28.0  221.0";
    expect(gains({ was: "  0.300  28.0  200.0", is: metric })).toEqual(["+10.0 %"]);
  });

  test("compares a falling row with the falling rows", () => {
    const was = "  0.300  28.0  200.0\n  0.400  28.0  250.0\n  0.300  28.0  180.0";
    const is = "  0.300  28.0  200.0\n  0.400  28.0  250.0\n  0.300  28.0  198.0";
    expect(gains({ was, is })).toEqual(["+0.00 % (noise)", "+0.00 % (noise)", "+10.0 %"]);
  });

  test("is not given between results that are quoted at different depressions or in different air", () => {
    const rows = { was: "  0.300  28.0  200.0", is: "  0.300  28.0  220.0" };
    expect(gains({ ...rows, after: "quote 25 inH2O" })).toEqual([]);
    expect(gains({ ...rows, after: "reference din-1343" })).toEqual([]);
    expect(gains({ ...rows, after: "entry bare" })).toEqual([]);
    expect(gains({ ...rows, after: "air 30 degC 1000 hPa" })).toEqual([]);
    expect(
      gains({ ...rows, before: "reference isa", after: "reference isa\n  air 30 degC 1000 hPa" }),
    ).toHaveLength(1);
  });

  test("between two benches has to exceed what their flow scales are sure of", () => {
    const scaled = (id: string) => `bench ${id}\n  shows flow\n  repeat 0.5 %\n  uncertainty 2 %`;
    const rows = { was: "  0.300  28.0  200.0", is: "  0.300  28.0  204.0" };
    // 1.96 · sqrt(2 · 0.5² + 2 · 1²) % = 3.10 %, by hand.
    expect(gains({ ...rows, benches: scaled("b") })).toEqual(["+2.0 %"]);
    expect(gains({ ...rows, benches: `${scaled("b")}\n${scaled("c")}`, after: "bench c" })).toEqual([
      "+2.0 % (noise)",
    ]);
  });
});
