import { describe, expect, test } from "vitest";
import { chartSpec } from "../../../shared/render/chart.ts";
import { LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { charted, chartOf, dataOf, notesOf, panelsOf, runsOf, runText, textsOf } from "../../kit/chart.ts";

const CAST = [58, 126, 187, 230, 226, 225];
const CUT = [60, 130, 195, 240, 247, 252];

/** The strip's title and the per cent that stand in it. */
function strip(spec: Readonly<Record<string, unknown>>) {
  const titles = panelsOf(spec).map(({ encoding }) => String(encoding.y.axis["title"]));
  const values = dataOf(spec, "differences").map(({ y }) => Number(y));
  return { title: titles.find((title) => title.endsWith("%") || title.includes("%;")), values };
}

function against(role: "baseline" | "compared", lines = "") {
  const [cut, cast] = runsOf(runText("cut", CUT, lines) + runText("cast", CAST));
  if (cut === undefined || cast === undefined) throw new Error("two runs");
  return chartSpec([charted(cut, "main"), charted(cast, role, { label: "as cast" })]);
}

describe("the strip of gains", () => {
  test("shows the gain over the baseline in per cent of it", () => {
    const { title, values } = strip(against("baseline"));
    expect(title).toBe("Gain over as cast, %");
    expect(values).toHaveLength(6);
    values.forEach((value, at) => {
      expect(value).toBeCloseTo(100 * ((CUT[at] ?? 0) / (CAST[at] ?? 1) - 1), 6);
    });
  });

  test("shows a compared run over the main one", () => {
    const { title, values } = strip(against("compared"));
    expect(title).toBe("Gain over cut, %");
    expect(values[0]).toBeCloseTo(100 * (58 / 60 - 1), 6);
  });

  test("has the band that the bench does not resolve: 1.96 √2 times its repeatability", () => {
    const band = dataOf(against("baseline"), "difference-band");
    // repeat 0.35 % of the bench in the kit.
    for (const { y, y2 } of band)
      expect([Number(y), Number(y2)]).toEqual([-0.97, 0.97].map((end) => expect.closeTo(end, 2)));
    expect(dataOf(against("baseline"), "difference-labels")).toEqual([
      expect.objectContaining({ text: "not resolved", y: 0 }),
    ]);
  });

  test("is not there for one run, for other conditions, nor for runs that share no lift", () => {
    expect(strip(chartOf(runText("a", CUT))).title).toBeUndefined();
    expect(strip(against("baseline", "  quote 10 inH2O\n")).title).toBeUndefined();
    expect(strip(against("baseline", "  direction blows\n")).title).toBeUndefined();
    const apart = runText("a", CUT) + runText("b", CAST).replaceAll("00  28", "50  28");
    expect(strip(chartOf(apart)).title).toBeUndefined();
  });
});

describe("cylinders of one stage", () => {
  const cylinders = (count: number) =>
    runsOf(
      Array.from({ length: count }, (_, at) =>
        runText(
          `c${at + 1}`,
          [58, 126, 187].map((flow) => flow * (1 + at / 1000)),
          `  cylinder ${at + 1}\n`,
        ),
      ).join(""),
    ).map((result, at) => charted(result, "compared", { label: `cylinder ${at + 1}` }));

  test("stand against their own mean", () => {
    const { title, values } = strip(chartSpec(cylinders(3)));
    expect(title).toBe("Difference from the mean of 3 cylinders, %");
    // 1.000, 1.001 and 1.002 over 1.001.
    expect(values.filter((_, at) => at % 3 === 0).sort((a, b) => a - b)).toEqual(
      [-0.0999, 0, 0.0999].map((value) => expect.closeTo(value, 4)),
    );
  });

  test("are named in the title", () => {
    expect(chartSpec(cylinders(4))["title"]).toMatchObject({ text: ["Cylinders 1 to 4"] });
    expect(chartSpec(cylinders(6).filter((_, at) => at !== 3))["title"]).toMatchObject({
      text: ["Cylinders 1 to 3, 5, 6"],
    });
  });

  test("more than four are grey but for the highest and the lowest, and all named beside the strip", () => {
    const spec = chartSpec(cylinders(8));
    const colours = new Map(
      dataOf(spec, "keys").map(({ color }, at) => [
        dataOf(spec, "labels").map(({ text }) => text)[at],
        color,
      ]),
    );
    expect(dataOf(spec, "keys")).toHaveLength(2);
    expect([...colours.values()].sort()).toEqual([...LIGHT_THEME.series.slice(0, 2)].sort());
    expect(textsOf(spec)).toContain("and 6 more");
    expect(dataOf(spec, "difference-labels")).toHaveLength(8);
    expect(notesOf(spec)).toContain("in colour: the highest and the lowest");
  });

  test("of which one is highlighted leave the others grey", () => {
    const runs = cylinders(8);
    const third = runs[2]?.result;
    const spec = chartSpec(runs, third === undefined ? {} : { highlight: third });
    expect(textsOf(spec)).toEqual(expect.arrayContaining(["cylinder 3", "and 7 more"]));
    expect(dataOf(spec, "keys").map(({ color }) => color)).toEqual([LIGHT_THEME.series[0]]);
  });
});
