import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ChartOptions, chartSpec } from "../../../shared/render/chart.ts";
import { editorTheme } from "../../../shared/render/chart-editor-theme.ts";
import { CURSOR_PARAM } from "../../../shared/render/chart-layers.ts";
import { DARK_THEME, LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { sameButData } from "../../../shared/render/same-but-data.ts";
import {
  charted,
  chartOf,
  checkLabelsApart,
  dataOf,
  FALLING_BACK,
  layersOf,
  notesOf,
  panelsOf,
  type Row,
  runsOf,
  runText,
  SHOP,
  textsOf,
} from "../../kit/chart.ts";
import { evaluateText } from "../../kit/evaluate.ts";

describe("points and lines", () => {
  test("every row with a lift and a flow is a point with its words and its line", () => {
    const points = dataOf(chartOf(runText("r", [58.4, "-", 187.4])), "points");
    expect(points.map(({ x, line }) => [x, line])).toEqual([
      [0.1, 2],
      [0.3, 4],
    ]);
    expect(points[0]?.["y"]).toBeCloseTo(58.4, 6);
    expect(points[0]?.["about"]).toMatch(/^r, lift 0\.100 in: 58\.\d+ ± \d\.\d+ cfm$/);
  });

  test("void rows are crosses and no points", () => {
    const spec = chartOf(runText("r", [58.4, '125.6 void "belt slipped"', 187.4]));
    expect(dataOf(spec, "points")).toHaveLength(2);
    expect(dataOf(spec, "crosses").map(({ x }) => x)).toEqual([0.2]);
    expect(textsOf(spec)).toContain("void");
  });

  test("a flagged point has another symbol, an outline and its codes", () => {
    const [run] = runsOf(runText("r", [58.4, 125.6, 187.4]));
    if (run === undefined) throw new Error("one run");
    const row = run.rows[1];
    const findings = new Map(row === undefined ? [] : [[row, ["off-target"]] as const]);
    const spec = chartSpec([charted(run, "main", { findings })]);
    const flagged = dataOf(spec, "points")[1];
    expect(flagged).toMatchObject({ shape: "triangle-up", fill: LIGHT_THEME.background });
    expect(flagged?.["about"]).toContain("off-target");
    expect(textsOf(spec)).toContain("off-target");
  });

  test("lines join averaged stations; the branch that comes down is dotted", () => {
    const down = "  0.500  28.0  240\n  0.300  28.0  183\n";
    const spec = chartOf(`${runText("r", [58.4, 125.6, 187.4, 229.8, 243, 250])}${down}`);
    const lines = dataOf(spec, "flow-lines");
    expect(lines.filter(({ series }) => series === "0 rising")).toHaveLength(6);
    const falling = lines.filter(({ series }) => series === "0 falling");
    expect(falling.map(({ x }) => x)).toEqual([0.3, 0.5]);
    expect(falling[0]?.["dash"]).not.toEqual(lines[0]?.["dash"]);
  });

  describe("off the scale", () => {
    /** The symbols at a place; an arrow's first two numbers are its tip, the next two where its head is widest. */
    const arrows = (spec: Row, x: number) =>
      dataOf(spec, "points").flatMap((point) => (point["x"] === x ? [String(point["shape"])] : []));

    test("a slipped reading is an arrow at the edge with its value, and does not stretch the axis", () => {
      const spec = chartOf(runText("r", [58.4, 125.6, 187.4, 2298, 240, 250]));
      expect(panelsOf(spec)[0]?.encoding.y.scale.domain).toEqual([0, 300]);
      expect(dataOf(spec, "points").find(({ x }) => x === 0.4)?.["y"]).toBe(300);
      expect(arrows(spec, 0.4)).toEqual([expect.stringMatching(/^M0,0L0\.8,0\.9/)]);
      expect(textsOf(spec)).toContain("off scale: 2298 cfm");
    });

    test("two readings at one place have one label with both values", () => {
      const row = "  0.400  28.0  900\n";
      const text = runText("r", [58.4, 125.6, 187.4, 900, 240, 250]);
      const spec = chartOf(text.replace(row, `${row.replace("900", "905")}${row}`));
      expect(textsOf(spec).filter((text) => String(text).includes("off scale"))).toEqual([
        "off scale: 905 cfm, 900 cfm",
      ]);
    });

    test("a lift has its own arrow and value, also of a void reading", () => {
      const spec = chartOf(`${runText("r", [58.4, 125.6, 187.4])}  9.50  28.0  150 void "no such lift"\n`);
      expect(arrows(spec, 0.3)).toContainEqual(expect.stringMatching(/^M0,0L-0\.9,0\.8/));
      expect(textsOf(spec)).toContain("void, off scale: 9.50 in");
    });

    test("a reading of any run tells its value, its codes only where there are few runs", () => {
      const text = ["a", "b", "c"].map((id) => runText(id, [58.4, 125.6, 187.4, 2298, 240, 250])).join("");
      const spec = chartOf(text);
      expect(textsOf(spec).filter((label) => String(label).includes("2298 cfm"))).not.toHaveLength(0);
      checkLabelsApart(spec, 760);
    });
  });

  test("flagged readings of one lift that stand on one another have one label", () => {
    const [run] = runsOf(`${runText("r", [58.4, 125.6, 187.4])}  0.300  28.0  187.0\n`);
    if (run === undefined) throw new Error("one run");
    const findings = new Map(run.rows.slice(2).map((row) => [row, ["off-target"]] as const));
    const spec = chartSpec([charted(run, "main", { findings })]);
    expect(textsOf(spec).filter((text) => text === "off-target")).toHaveLength(1);
  });

  test("a label that stands away from its point is led to it", () => {
    const { runs } = evaluateText(`${SHOP}${runText("r", [58.4, 125.6, 187.4, 188, 189, 190])}`);
    const [run] = runs;
    if (run === undefined) throw new Error("one run");
    const codes = ["a-very-long-code-of-a-finding", "another-that-is-as-long"];
    const findings = new Map(run.rows.map((row) => [row, codes] as const));
    const leads = (options: ChartOptions) =>
      dataOf(chartSpec([charted(run, "main", { findings })], options), "marks").filter(
        ({ width }) => width === 0.8,
      );
    expect(leads({ width: 400 })).not.toHaveLength(0);
  });

  test("an expected flow is marked with its band", () => {
    const spec = chartOf(runText("r", [58.4, 125.6], "  expect flow 120 cfm at 0.2 in within 5 %\n"));
    const [target] = dataOf(spec, "targets");
    expect([target?.["y"], target?.["y2"]]).toEqual([114, 126]);
    expect(target?.["x"]).toBeLessThan(0.2);
    expect(target?.["x2"]).toBeCloseTo(0.2, 9);
    expect(dataOf(spec, "marks").map(({ y }) => y)).toEqual(expect.arrayContaining([120]));
    expect(textsOf(spec)).toContain("target 120 cfm");
  });
});

describe("the lift from which geometry alone flattens the curve", () => {
  function checkMark(port: string, at: number | undefined, label: string | undefined) {
    const [run] = evaluateText(`${port}${runText("r", [58, 126, 187, 230, 243, 250])}`).runs;
    if (run === undefined) throw new Error("one run");
    const spec = chartSpec([charted(run)]);
    const [mark] = dataOf(spec, "marks");
    expect(mark?.["x"]).toEqual(at === undefined ? undefined : expect.closeTo(at, 3));
    if (label !== undefined) expect(textsOf(spec)).toContain(label);
  }

  test("is where the gap under the valve reaches the throat's area", () => {
    // Heywood (1988), equations 6.8 and 6.9: w = 0.0424, throat less stem 2.3957 in2, slant 0.3856, L = 0.4257 in.
    checkMark(SHOP, 0.4257, "throat limits from here");
  });

  test("is a quarter of the valve where the port says no more", () => {
    checkMark(SHOP.replace(/ {2}throat.*\n/, ""), 0.505, "curtain exceeds the valve's disc from here");
  });

  test("is not marked without a valve", () => {
    checkMark("", undefined, undefined);
  });
});

describe("fall-backs", () => {
  function checkShade(flows: readonly number[], from: number, to: number, fill: string, label: RegExp) {
    const spec = chartOf(runText("r", flows));
    const shades = dataOf(spec, "falls");
    expect(shades).toHaveLength(1);
    expect(shades[0]?.["x"]).toBeCloseTo(from, 9);
    expect(shades[0]?.["x2"]).toBeCloseTo(to, 9);
    expect(shades[0]?.["fill"]).toBe(fill);
    expect(textsOf(spec)).toContainEqual(expect.stringMatching(label));
  }

  test("are shaded from onset to the last station, with their depth", () => {
    checkShade(FALLING_BACK, 0.4, 0.6, LIGHT_THEME.fallBack, /^falls back 2\.1 %$/);
  });

  test("are shaded up to their recovery", () => {
    checkShade([...FALLING_BACK, 233, 236], 0.4, 0.7, LIGHT_THEME.fallBack, /^falls back 2\.1 %$/);
  });

  test("of a baseline are fainter and say whose they are, without a code beside them", () => {
    const { runs } = evaluateText(
      `${SHOP}${runText("was", FALLING_BACK)}${runText("is", [59, 127, 190, 233, 240, 246])}`,
    );
    const [was, is] = runs;
    if (was === undefined || is === undefined) throw new Error("two runs");
    const findings = new Map(was.rows.slice(4).map((row) => [row, ["fall-back"]] as const));
    const spec = chartSpec([charted(was, "baseline", { findings }), charted(is)]);
    expect(dataOf(spec, "falls")).toMatchObject([{ x: 0.4, fill: LIGHT_THEME.unresolved }]);
    expect(textsOf(spec)).toContain("was falls back 2.1 %");
    expect(textsOf(spec)).not.toContain("fall-back");
  });

  test("that chance may have made are lighter and say so", () => {
    const flows = [58.4, 125.6, 187.4, 229.8, 228.5, 228.6];
    checkShade(flows, 0.4, 0.6, LIGHT_THEME.unresolved, /^0\.6 %\? not resolved$/);
  });

  test("that are shaded flag no point as well", () => {
    const [run] = runsOf(runText("r", FALLING_BACK));
    if (run === undefined) throw new Error("one run");
    const findings = new Map(run.rows.slice(4).map((row) => [row, ["fall-back"]] as const));
    const alone = dataOf(chartSpec([charted(run, "main", { findings })]), "points");
    expect(alone.map(({ shape }) => shape)).not.toContain("triangle-up");
    expect(alone[4]?.["about"]).toContain("fall-back");
  });

  test("are not there on a curve that rises", () => {
    expect(dataOf(chartOf(runText("r", [58.4, 125.6, 187.4])), "falls")).toEqual([]);
  });
});

describe("axes and panels", () => {
  function checkTitles(options: ChartOptions, titles: readonly unknown[], lift: string) {
    const settled = runText("r", [58.4, 125.6]).replace("flow[cfm]", "flow[cfm] settle[s]");
    const panels = panelsOf(
      chartOf(settled.replace("58.4", "58.4 1.4").replace("125.6", "125.6 1.5"), options),
    );
    expect(panels.map(({ encoding }) => encoding.y.axis["title"])).toEqual(titles);
    expect(panels.at(-1)?.encoding.x.axis["title"]).toBe(lift);
  }
  const flow = "Corrected flow, cfm at 28 inH2O, air of the day";
  const time = "Time to settle, s";

  test("say what they show, in which unit, at which depression and in which air", () => {
    checkTitles({}, [flow, "Cd on the curtain area", time], "Valve lift, in");
    checkTitles({ cd: "gap" }, [flow, "Cd on the gap area", time], "Valve lift, in");
    checkTitles(
      { xAxis: "lift-ratio" },
      [flow, "Cd on the curtain area", time],
      "Lift over valve diameter, L/D",
    );
  });

  test("a reference air is named", () => {
    const spec = chartOf(runText("r", [58.4], "  reference isa\n"));
    expect(panelsOf(spec)[0]?.encoding.y.axis["title"]).toBe("Corrected flow, cfm at 28 inH2O, in isa");
  });

  test("a coefficient that cannot be computed is left out with a word about it", () => {
    const [run] = evaluateText(`${SHOP.replace("  throat     1.780 in\n", "")}${runText("r", [58.4])}`).runs;
    if (run === undefined) throw new Error("one run");
    const spec = chartSpec([charted(run)], { cd: "throat" });
    expect(panelsOf(spec)).toHaveLength(1);
    expect(notesOf(spec)).toMatch(/no Cd on the throat area: it takes the port's throat, stem/);
  });

  test("the flow axis begins at zero, and all panels share one lift axis", () => {
    const panels = panelsOf(chartOf(runText("r", FALLING_BACK)));
    expect(panels[0]?.encoding.y.scale.domain[0]).toBe(0);
    for (const { encoding } of panels) expect(encoding.x.scale.domain).toEqual([0, 0.6]);
  });

  test("the coefficient on the curtain is that of the averaged station", () => {
    // Effective over curtain area of the same row, pi D L; D = 2.020 in.
    const [run] = runsOf(runText("r", [58.4]));
    if (run === undefined) throw new Error("one run");
    const expected = (run.rows[0]?.effectiveArea ?? 0) / (Math.PI * 2.02 * 0.1 * 0.0254 ** 2);
    expect(dataOf(chartSpec([charted(run)]), "coefficients")[0]?.["y"]).toBeCloseTo(expected, 9);
  });

  test("themes are plain values", () => {
    expect(chartOf(runText("r", [58.4]), { theme: DARK_THEME })["background"]).toBe(DARK_THEME.background);
  });
});

describe("a picture on show", () => {
  const first = runText("r", FALLING_BACK, "  stations 0.1 in to 0.6 in by 0.1 in\n");
  const edited = (from: string, to: string) => chartOf(first.replace(from, to));

  test.each([
    ["a reading is changed", "187.4", "188.6"],
    ["a reading steps out of line", "187.4", "180.1"],
    ["a point is taken back", "125.6", '125.6 void "belt"'],
    ["a point is not there yet", "125.6", "-"],
    ["the fall-back goes", "224.9", "231.2"],
  ])("takes new data where it stands when %s", (_, from, to) => {
    const [before, after] = [chartOf(first), edited(from, to)];
    expect(after).not.toEqual(before);
    expect(sameButData(before, after)).toBe(true);
  });

  test.each([
    ["a reading leaves the flow axis", "229.8", "262.0"],
    ["a lift leaves the lift axis", "0.600  28", "0.650  28"],
    ["the run has another title", "run r\n", 'run r "the first cut"\n'],
  ])("is made anew when %s", (_, from, to) => {
    expect(sameButData(chartOf(first), edited(from, to))).toBe(false);
  });

  test("takes any reading that stays under the axis's end", () => {
    const flow = fc.integer({ min: 1, max: 249 });
    fc.assert(
      fc.property(
        fc.array(flow, { minLength: 6, maxLength: 6 }),
        fc.integer({ min: 320, max: 1600 }),
        (flows, width) => {
          // A first station that stays holds the flow axis; without a port there is no coefficient whose axis moves.
          const with250 = (rest: readonly number[]) =>
            chartSpec(
              evaluateText(`bench b\n  shows flow\n${runText("r", [...rest, 250])}`).runs.map((run) =>
                charted(run),
              ),
              { width },
            );
          const all = with250([50, 100, 150, 200, 220, 240]);
          expect(sameButData(all, with250(flows))).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("rings the point that the parameter names, and none in a picture that stands alone", () => {
    const spec = chartOf(first);
    expect(spec["params"]).toEqual([{ name: CURSOR_PARAM, value: "" }]);
    expect(dataOf(spec, "points").map(({ point }) => point)).toContain("r:3");
    const rings = layersOf(spec).filter(({ transform }) => transform !== undefined);
    expect(rings.map(({ data }) => (data as Row)["name"])).toEqual([
      "crosses",
      "points",
      "coefficients",
      "coefficient-places",
    ]);
    expect(dataOf(spec, "coefficients")[0]).toMatchObject({ run: "r", line: 3, point: "r:3" });
  });

  test("tells screen readers its points and its notes, and nothing beside them", () => {
    const told = layersOf(chartOf(first)).filter(({ mark }) => (mark as Row)["aria"] !== false);
    expect(told.map(({ data }) => (data as Row)["name"])).toEqual(["crosses", "points", "notes"]);
    for (const { x: _, ...point } of dataOf(chartOf(first), "points")) expect(point["about"]).toBeTruthy();
  });
});

describe("high contrast", () => {
  const theme = editorTheme({ kind: "high-contrast-dark", background: "#000000", text: "#ffffff" });

  test("has no line under 2 px, no grid and nothing that shines through", () => {
    const spec = chartOf(runText("a", FALLING_BACK) + runText("b", [57, 120, 180]), { theme });
    const widths = Object.values((spec as { datasets: Record<string, readonly Row[]> }).datasets)
      .flat()
      .flatMap(({ width }) => (width === undefined ? [] : Number(width)));
    expect(Math.min(...widths)).toBe(2);
    expect(JSON.stringify(spec)).not.toContain('"grid":true');
    for (const opacity of JSON.stringify(spec).matchAll(/"(?:fill|stroke)?[oO]pacity":([\d.]+)/g)) {
      expect(Number(opacity[1])).toBe(1);
    }
  });
});

test("a baseline that was not read alike has no gain over it, and what differs is said", () => {
  const text = (entry: string) =>
    `${runText("was", [58, 126, 187], `  entry ${entry}\n`)}${runText("is", [59, 127, 190], "  entry clay\n")}`;
  const drawn = (entry: string) => {
    const [was, is] = runsOf(text(entry));
    if (was === undefined || is === undefined) throw new Error("two runs");
    return chartSpec([charted(was, "baseline"), charted(is)]);
  };
  const words = "was not read alike: entry (bare, there clay)";
  expect(notesOf(drawn("bare"))).toContain(words);
  expect(dataOf(drawn("bare"), "differences")).toEqual([]);
  expect(notesOf(drawn("clay"))).not.toContain("not read alike");
  expect(dataOf(drawn("clay"), "differences")).toHaveLength(3);
});

describe("several runs", () => {
  test("are named at their lines' ends, the baseline grey", () => {
    const [cast, cut] = runsOf(runText("cast", FALLING_BACK) + runText("cut", [59, 127, 192, 236, 243, 248]));
    if (cast === undefined || cut === undefined) throw new Error("two runs");
    const spec = chartSpec([charted(cast, "baseline", { label: "as cast" }), charted(cut, "main")]);
    expect(textsOf(spec)).toEqual(expect.arrayContaining(["as cast", "cut"]));
    expect(dataOf(spec, "keys").map(({ color }) => color)).toEqual([
      LIGHT_THEME.series[0],
      LIGHT_THEME.baseline,
    ]);
    // The baseline's fall-back is not the main run's.
    expect(dataOf(spec, "falls")).toMatchObject([{ fill: LIGHT_THEME.unresolved }]);
    expect(spec["title"]).toMatchObject({ text: ["cut against cast"] });
  });

  test("differ without colour too", () => {
    const spec = chartOf(
      Array.from({ length: 8 }, (_, at) => runText(`c${at}`, [58 + at, 125 + at])).join(""),
    );
    const looks = dataOf(spec, "keys").map(({ color, shape }) => `${color} ${shape}`);
    expect(new Set(looks).size).toBe(8);
    const near = dataOf(spec, "keys").map(({ shape }) => shape);
    expect(new Set(near.slice(0, 7)).size).toBe(7);
  });

  test("of which none is the main one share no signs without a name", () => {
    const text = runText("a", FALLING_BACK, "  expect flow 120 cfm at 0.2 in within 5 %\n");
    const equals = runsOf(text + text.replace("run a", "run b")).map((result) => charted(result, "compared"));
    const spec = chartSpec(equals);
    expect(dataOf(spec, "falls")).toEqual([]);
    expect(textsOf(spec).join()).not.toContain("target");
  });

  test("without a point are named as such", () => {
    const spec = chartOf(runText("a", [58.4]) + runText("b", ["-"]));
    expect(notesOf(spec)).toContain("without a point: b");
  });

  test("quoted otherwise say so in their label", () => {
    const spec = chartOf(runText("a", [58.4]) + runText("b", [50], "  quote 10 inH2O\n"));
    expect(textsOf(spec).join(" ")).toContain("b (at 10 inH2O, air of the day)");
  });
});

describe("what a record may hold", () => {
  test("texts stay data: nothing of them becomes an expression or a line of its own", () => {
    const hostile = `"}]{ datum.x \${alert(1)} <script>\u0000\u202e\n ${"long ".repeat(2000)}`;
    const [run] = runsOf(runText("r", [58.4, 125.6]));
    if (run === undefined) throw new Error("one run");
    const spec = chartSpec([
      charted(run, "main", { label: hostile }),
      charted(run, "compared", { label: hostile }),
    ]);
    const text = JSON.stringify(spec);
    expect(text).not.toMatch(/"(expr|signal|calculate|labelExpr|test|url)":/);
    const filters = new Set(text.match(/"filter":"[^"]*"/g));
    expect([...filters]).toEqual([`"filter":"datum.point === ${CURSOR_PARAM}"`]);
    expect(text).not.toContain("\\u0000");
    expect(text).not.toContain("\u202e");
    for (const written of textsOf(spec)) expect(String(written).length).toBeLessThan(100);
    checkLabelsApart(spec, 760);
  });

  test("many readings that all say the same have one label, with their number", () => {
    const labelsOf = (count: number, rows: number, reason = "") => {
      const text = Array.from(
        { length: rows },
        (_, at) => `  ${((at + 1) / rows).toFixed(5)}  28  ${50 + (100 * at) / rows}${reason}`,
      );
      const [run] = runsOf(`run r\n  lift[in]  depression[inH2O]  flow[cfm]\n${text.join("\n")}\n`);
      if (run === undefined) throw new Error("one run");
      const findings = new Map(run.rows.slice(0, count).map((row) => [row, ["impossible"]] as const));
      return textsOf(chartSpec([charted(run, "main", { findings })])).map(String);
    };
    const impossible = (count: number, rows: number) =>
      labelsOf(count, rows).filter((text) => text.includes("impossible"));
    expect(impossible(5000, 5000)).toEqual(["impossible at 5000 readings"]);
    expect(impossible(9, 12)).toEqual(["impossible at 9 readings"]);
    expect(impossible(8, 12)).toEqual(Array(8).fill("impossible"));
    expect(labelsOf(0, 3000, ' void "belt slipped"').filter((text) => text.includes("void"))).toEqual([
      "void at 3000 readings",
    ]);
  });

  test("of twenty thousand rows those are drawn that stand out, flagged ones by themselves, and the rest is told of", () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => {
      const flow = at === 7777 ? 30 : at === 8888 ? 1 : at / 350 + (at % 977) / 500;
      return `  ${(at / 1e5).toFixed(5)}  28  ${flow}`;
    }).join("\n");
    const [run] = runsOf(`run r\n  lift[in]  depression[inH2O]  flow[cfm]\n${rows}\n`);
    if (run === undefined) throw new Error("one run");
    const flagged = run.rows.filter((_, at) => at % 5000 === 1234);
    const findings = new Map(flagged.map((row) => [row, ["off-target"]] as const));
    const spec = chartSpec([charted(run, "main", { findings })]);
    const points = dataOf(spec, "points");
    expect(points.length).toBeLessThanOrEqual(2000);
    const lines = points.map(({ line }) => line);
    // The first row stands on the third line of the block.
    for (const at of [0, 7777, 8888, 19_999, ...[1234, 6234, 11_234, 16_234]])
      expect(lines).toContain(at + 2);
    const told = points.filter(({ about }) => String(about).includes("off-target"));
    expect(told.map(({ shape }) => shape)).toEqual(Array(4).fill("triangle-up"));
    expect(notesOf(spec)).toContain(`${20_000 - points.length} points lie among those that are drawn`);
    const close = chartSpec([charted(run, "main", { findings })], { lifts: [0.1 * 0.0254, 0.105 * 0.0254] });
    // 501 of them stand from 0.1 to 0.105 in, which is few enough for all.
    expect(dataOf(close, "points")).toHaveLength(501);
    expect(notesOf(close)).not.toContain("lie among");
    for (const name of ["flow-lines", "coefficients"]) {
      expect(dataOf(spec, name).length).toBeLessThanOrEqual(1000);
    }
  });

  test("nothing to draw is said in words", () => {
    expect(dataOf(chartSpec([]), "message")).toEqual([{ text: "No run to draw" }]);
    expect(dataOf(chartOf(runText("r", ["-", "-"])), "message")[0]?.["text"]).toMatch(/^No point to draw/);
  });

  test("the specification is plain JSON and drawn alike twice", () => {
    fc.assert(
      fc.property(fc.array(fc.float({ noNaN: true, noDefaultInfinity: true }), { maxLength: 6 }), (flows) => {
        const written = flows.map((flow) => (Math.abs(flow) > 1e15 ? 0 : flow.toFixed(3)));
        const spec = chartOf(runText("r", written));
        expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
        expect(chartOf(runText("r", written))).toEqual(spec);
        expect(JSON.stringify(dataOf(spec, "points"))).not.toContain('"y":null');
      }),
      { numRuns: 60 },
    );
  });
});
