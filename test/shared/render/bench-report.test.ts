// The history of a bench as it is printed, published and drawn.
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { drawSvg } from "../../../server/cli/draw.ts";
import { benchReportSchema } from "../../../shared/messages/bench-report.ts";
import { benchChart } from "../../../shared/render/bench-chart.ts";
import { benchDocument } from "../../../shared/render/bench-document.ts";
import { benchMarkdown } from "../../../shared/render/bench-markdown.ts";
import { type BenchPage, benchText } from "../../../shared/render/bench-text.ts";
import { DARK_THEME } from "../../../shared/render/chart-theme.ts";
import { BENCH_SHOP, benchSession, pagesOf } from "../../kit/bench-pages.ts";
import { HOSTILE } from "./table-input.ts";

const run = (id: string, flows: readonly number[]) =>
  `run ${id}\nstage "ported"\nlift[in] depression[inH2O] flow[cfm] settle[s] duty[%]\n${flows
    .map((flow, i) => `0.${i + 1} 28.0 ${flow} 1.${i} ${20 + i}`)
    .join("\n")}\n`;
const plate = (flow: number) => `plate-check p1\ndepression[inH2O] flow[cfm]\n28.0 ${flow}\n28.0 ${flow}\n`;

const FULL = pagesOf({
  "shop.headnote": BENCH_SHOP,
  "a.headnote": benchSession({
    session: ["leak 1.2 cfm at 28 inH2O"],
    blocks: run("a", [50, 90, 120, 140]) + run("again", [50.2, 90.1, 120.3, 140.4]) + plate(201.2),
  }),
  "b.headnote": benchSession({
    date: "2026-05-02",
    blocks: run("b", [50.1, 90.6, 120.2, 141]) + plate(200.4),
  }),
  "c.headnote": benchSession({ date: "2026-07-02", blocks: plate(200.9) }),
});
const BARE = pagesOf({
  "shop.headnote": BENCH_SHOP,
  "a.headnote": benchSession({ blocks: "run a\nlift[in] depression[inH2O] flow[cfm]\n0.1 28 50\n" }),
});

describe("the document", () => {
  const validate = new Ajv2020({ strict: true, allErrors: true }).compile(z.toJSONSchema(benchReportSchema));

  test.each([
    ["of a bench with everything", FULL],
    ["of a bench with next to nothing", BARE],
    ["of no bench", []],
  ] as const)("%s is as its schema says", (_, pages: readonly BenchPage[]) => {
    const document: unknown = JSON.parse(JSON.stringify(benchDocument(pages)));
    validate(document);
    expect(validate.errors).toBeNull();
    expect(benchReportSchema.parse(document)).toEqual(document);
  });

  test("gives values in the records' units and in SI", () => {
    const [bench] = benchDocument(FULL).benches;
    expect(bench?.leak?.median).toEqual({
      value: 0.6,
      unit: "cfm",
      si: expect.closeTo(0.6 * 4.719474432e-4, 12),
    });
    expect(bench?.settle?.byLift[1]).toMatchObject({
      from: { value: 0.2, unit: "in", si: 0.00508 },
      readings: 3,
    });
  });
});

describe("in words", () => {
  test("what is not there is said", () => {
    for (const words of [
      "no settle times in these records",
      "no timed runs in these records",
      "no point was read more than once in these records",
      "no port was read again in the same stage on another day in these records",
      "no plate check in these records",
      "no motor duty in these records",
      "# settle: no suggestion, it needs 5 timed readings and the records have 0; the block states 1.5 s",
    ]) {
      expect(benchText(BARE)).toContain(words);
      expect(benchMarkdown(BARE)).toContain(words);
    }
    expect(benchText([])).toBe("no bench in these records\n");
    expect(benchMarkdown([])).toBe("no bench in these records\n");
  });

  test("a suggested line is a line of the format", () => {
    expect(benchText(FULL)).toMatch(/\n {2}settle {5}1\.1 s\n/);
    expect(benchText(FULL)).toMatch(/\n {2}quick {6}1\.7 s\n/);
    expect(benchText(FULL)).toMatch(/\n {2}within {5}0\.1 inH2O\n/);
  });

  test.each(HOSTILE)("the text %j acts on nothing", (text) => {
    const quoted = text.replace(/["\\]/g, (letter) => `\\${letter}`);
    const pages = pagesOf({
      "a.headnote": `headnote 1\nbench b "${quoted}"\nshows flow\nsession 2026-03-02\nbench b\n`,
      "b.headnote": `headnote 1\nbench b "${quoted}"\nshows flow\nsession 2026-03-02\nbench b\nrun r\nstage "${quoted}"\n`,
    });
    expect(benchText(pages).replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u202e]/u);
    expect(benchMarkdown(pages).replaceAll("\n", "")).not.toMatch(
      /[\p{Cc}\u202e]|(?<!\\)<b>|(?<!\\)\]\(b\)/u,
    );
  });
});

describe("the picture", () => {
  test("has a panel for settle times and one for each plate, with the quick line and the limits", async () => {
    const svg = await drawSvg(benchChart(FULL, DARK_THEME));
    for (const words of [
      "north: time to settle, s",
      "quick 2.0 s",
      "upper limit",
      "lower limit",
      "2026-03-02",
      "certified",
    ]) {
      expect(svg).toContain(words);
    }
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  test.each([
    ["nothing at all", []],
    ["next to nothing", BARE],
  ] as const)("of %s says so", async (_, pages: readonly BenchPage[]) => {
    expect(await drawSvg(benchChart(pages))).toContain(
      "Nothing to draw: no settle times and no plate checks",
    );
  });
});
