// What the preview is given of a record: the same picture as the command's, and what stands beside it.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { diskFiles } from "../../server/disk/disk-files.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import { tracedRun } from "../../server/rules/examples.ts";
import { blockPictures } from "../../server/service/block-pictures.ts";
import type { ChartedRecord } from "../../server/service/chart-runs.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { type PreviewWish, previewView } from "../../server/service/preview.ts";
import { picks } from "../../server/service/preview-choice.ts";
import { previewFile } from "../../server/service/preview-file.ts";
import { createService } from "../../server/service/service.ts";
import { type Choice, type PreviewView, previewViewSchema } from "../../shared/messages/preview.ts";
import { inShop } from "../kit/command.ts";
import { shopRecord } from "../kit/service.ts";

const LOOK: PreviewWish["look"] = {
  width: 760,
  colours: { kind: "light", background: "#ffffff", text: "#1d2126", font: "" },
};
const WISH: PreviewWish = {
  line: null,
  shown: null,
  choice: { kind: "cursor" },
  axis: "lift",
  cd: "curtain",
  units: [],
  lifts: null,
  look: LOOK,
};

function opened(text: string): ChartedRecord {
  const service = createService({
    files: memoryFiles(exampleFiles(text), ""),
    config: () => DEFAULT_CONFIG,
  });
  const checked = service.check(FIRST_EXAMPLE_FILE);
  if ("problem" in checked) throw new Error(checked.problem);
  return { analysis: checked.analysis, findings: checked.findings, service };
}

/** The view, which is checked to be one that the page takes, and nothing but JSON. */
function viewOf(text: string, wish: Partial<PreviewWish> = {}): PreviewView {
  const view = previewView(opened(text), { ...WISH, ...wish }, 7, (path) => `file:///${path}`);
  expect(previewViewSchema.parse(JSON.parse(JSON.stringify(view)))).toEqual(view);
  return view;
}

const METRIC: PreviewWish["units"] = ["mm", "L/s", "kPa"];

const rows = "  0.100  28.0  55.0\n  0.200  28.0  111.0\n  0.300  28.0  157.0\n";
const TWO = `${shopRecord(rows)}
run i2
  cylinder 2
  stage "cut"
  baseline i1
  lift[in]  depression[inH2O]  flow[cfm]
  0.100  28.0  57.0
  0.200  28.0  114.0

run i3
  cylinder 3
  stage "cut"
  lift[in]  depression[inH2O]  flow[cfm]
  0.100  28.0  57.2
`;
/** A run with a trace, a ladder and a map of its own. */
const FOUR = `${tracedRun(0.05)}
ladder 0.500 in of r1
  depression[inH2O]  flow[cfm]
  10.0  116.6
  15.0  142.8
  20.0  164.9
  28.0  195.2

map "at the pinch" of r1
  lift       0.500 in
  x[in]  y[in]  velocity[ft/s]
  0.3  0.2  300
  0.9  0.2  310
  0.3  1.2  140
`;
const lineOf = (text: string, part: string) => text.slice(0, text.indexOf(part)).split("\n").length - 1;
const ids = (view: PreviewView) => view.runs.map(({ id }) => id);

describe("the runs shown are", () => {
  test.each<[string, Partial<PreviewWish>, readonly string[]]>([
    ["the one of the cursor, with its baseline", { line: lineOf(TWO, "0.100  28.0  57.0") }, ["i2", "i1"]],
    ["the one that was on show, where the cursor stands in none", { line: 3, shown: "i3" }, ["i3"]],
    ["the first, where nothing says which", {}, ["i1"]],
    ["all", { choice: { kind: "all" } }, ["i2", "i3", "i1"]],
    ["all cylinders of a stage", { choice: { kind: "stage", stage: "cut" } }, ["i2", "i3"]],
    ["the one that was chosen", { choice: { kind: "run", id: "i3" }, line: 30 }, ["i3"]],
    ["those of the cursor, where the chosen one has gone", { choice: { kind: "run", id: "x" } }, ["i1"]],
  ])("%s", (_, wish, expected) => {
    expect(ids(viewOf(TWO, wish))).toEqual(expected);
  });

  test("offered by name, and only where there is a choice", () => {
    expect(viewOf(TWO).picks.map(({ label }) => label)).toEqual([
      "run at the cursor",
      "all 3 runs",
      "2 cylinders, cut",
      "i1",
      "i2 (cut)",
      "i3 (cut)",
    ]);
    expect(viewOf(shopRecord(rows)).picks).toEqual([]);
  });
});

describe("a trace, a ladder or a map is shown", () => {
  const [trace, ladder, map] = ["trace 0.500 in of r1", "ladder 0.500 in of r1", "map of r1: at the pinch"];

  test.each<[string, Partial<PreviewWish>, readonly string[]]>([
    ["where the cursor stands in it", { line: lineOf(FOUR, "  15.0  142.8") }, [ladder]],
    ["where it was chosen", { choice: { kind: "block", id: trace }, line: 0 }, [trace]],
    ["where it was on show and the cursor stands in nothing", { line: 2, shown: map }, [map]],
    ["not where the cursor stands in a run", { line: lineOf(FOUR, "  0.500    "), shown: map }, ["r1"]],
    ["not where what was chosen has gone", { choice: { kind: "block", id: "trace 1 in of r1" } }, ["r1"]],
  ])("%s", (_, wish, expected) => {
    expect(ids(viewOf(FOUR, wish))).toEqual(expected);
  });

  test("by a name that is offered, of two alike with a number", () => {
    const labels = (text: string) => viewOf(text).picks.map(({ label }) => label);
    expect(labels(FOUR)).toEqual(["at the cursor", "r1", trace, ladder, map]);
    const twice = `${FOUR}\n${FOUR.slice(FOUR.indexOf("map "))}`;
    expect(labels(twice).at(-1)).toBe(`${map} (2)`);
    const second = viewOf(twice, { choice: { kind: "block", id: `${map} (2)` } });
    expect(second.runs[0]?.line).toBe(twice.slice(0, twice.lastIndexOf("map ")).split("\n").length - 1);
    expect(labels(FOUR.replace("at the pinch", "x".repeat(5000))).at(-1)?.length).toBeLessThan(300);
  });

  test("with its own words, what its run stands on, and the numbers with their lines", () => {
    const view = viewOf(FOUR, { choice: { kind: "block", id: trace } });
    expect([view.shows, view.hasRatio]).toEqual(["trace", false]);
    expect(view.facts.map(({ label }) => label)).toEqual(
      expect.arrayContaining(["samples", "settled", "let go", "bench", "air"]),
    );
    const [table] = view.tables;
    expect(view.summary).toEqual([
      "lets go: -4.9 % at 1.3 s",
      "settled after 1.5 s",
      expect.stringMatching(/^steady: corrected flow 185/),
    ]);
    const lines = FOUR.split("\n");
    expect(table?.rows).toHaveLength(22);
    for (const { line, cells } of table?.rows ?? []) {
      expect(Number(lines[line ?? -1]?.trim().split(/ +/)[0])).toBe(Number(cells[0]));
    }
    expect(table?.rows[13]?.cells.at(-1)).toBe("lets go: -4.9 %");
    const speeds = viewOf(FOUR, { choice: { kind: "block", id: map } }).tables[0];
    expect(speeds?.rows.map(({ cells }) => cells)).toEqual([
      ["0.3", "0.2", "300.0", "1.200"],
      ["0.9", "0.2", "310.0", "1.240"],
      ["0.3", "1.2", "140.0", "0.560"],
    ]);
    const steps = viewOf(FOUR, { choice: { kind: "block", id: ladder } }).tables[0];
    expect(steps?.columns.map(({ title }) => title)).toEqual([
      "depression",
      "flow",
      "±U",
      "off the square root law",
    ]);
  });

  test("in other units too", () => {
    const view = viewOf(FOUR, { choice: { kind: "block", id: ladder }, units: ["kPa", "L/s"] });
    expect(view.tables[0]?.columns.map(({ unit }) => unit)).toEqual(["kPa", "L/s", "L/s", "%"]);
    expect(JSON.stringify(view.spec)).toContain("Depression, kPa");
  });

  test("of a long trace with the rows that stand out, and all of them in the file", () => {
    const rows = Array.from({ length: 2000 }, (_, at) => at / 10);
    const long = tracedRun(0.05, rows).replace(/ 28\.0 +185\.5/, " 31.7  185.5");
    const choice = { kind: "block", id: trace } as const;
    const [table] = viewOf(long, { choice }).tables;
    expect(table?.rows.length).toBeLessThanOrEqual(400);
    expect((table?.rows.length ?? 0) + (table?.more ?? 0)).toBe(2000);
    const cells = table?.rows.map((row) => row.cells) ?? [];
    expect(cells.some(([, depression]) => depression === "31.7")).toBe(true);
    expect(cells.some((row) => row.at(-1)?.startsWith("lets go"))).toBe(true);
    const file = previewFile(opened(long), { ...WISH, choice, format: "csv" });
    expect(file?.name).toBe("main-trace-0.500-in-of-r1");
    expect(file?.text.split("\r\n").length).toBe(2002);
    expect(file?.text).toContain("line,time[s],depression[inH2O],corrected flow[cfm],");
  });

  test("or not, with the reason and the line that is to blame", () => {
    const choice = { kind: "block", id: ladder } as const;
    const broken = FOUR.replace("  15.0  142.8", "  15,0  142.8").replace(
      "depression[inH2O]  flow[cfm]\n  10",
      "depression[inH2O]  flow[cfmm]\n  10",
    );
    const view = viewOf(broken, { choice });
    expect([view.spec, view.isBroken]).toEqual([null, true]);
    expect(view.problem).toMatchObject({
      line: lineOf(broken, "flow[cfmm]"),
      text: expect.stringMatching(/cfmm/),
    });
    const short = FOUR.slice(0, FOUR.indexOf("  15.0  142.8"));
    expect(viewOf(short, { choice })).toMatchObject({
      spec: null,
      isBroken: false,
      problem: { text: expect.stringMatching(/fewer than three steps/) },
    });
  });

  test("that is lost while its heading is written keeps its name, for its picture to stay", () => {
    const line = lineOf(FOUR, "ladder 0.500 in");
    for (const heading of ["ladder 0.500 in of r", "ladder 0.500 in of"]) {
      const broken = FOUR.replace("ladder 0.500 in of r1", heading);
      const view = viewOf(broken, { line: line + 2, shown: ladder });
      expect(view).toMatchObject({ shows: "ladder", isBroken: true, spec: null, runs: [{ id: ladder }] });
      expect(view.problem?.line).toBe(line);
      expect(ids(viewOf(broken, { line: 0, shown: ladder }))).toEqual(["r1"]);
    }
    const gone = FOUR.slice(0, FOUR.indexOf("ladder 0.500"));
    expect(ids(viewOf(gone, { line: 0, shown: ladder }))).toEqual(["r1"]);
  });

  test("its findings are its own and those of all, not those of runs", () => {
    const broken = FOUR.replace("28.0      195.2\ntrace", "20.0      195.2\ntrace");
    const codes = (choice: Choice) => viewOf(broken, { choice }).findings.map(({ code }) => code);
    const ofRun = codes({ kind: "run", id: "r1" });
    const ofMap = codes({ kind: "block", id: map });
    expect(ofRun).toContain("off-target");
    expect(ofMap).not.toContain("off-target");
  });
});

describe("the picture is that of the command", () => {
  test.each<[string, readonly string[]]>([
    ["trace 0.500 in of r1", ["--trace", "0.500"]],
    ["ladder 0.500 in of r1", ["--ladder", "0.500"]],
    ["map of r1: at the pinch", ["--map"]],
  ])("%s", async (id, args) => {
    const choice = { kind: "block", id } as const;
    await inShop({ "r.headnote": FOUR }, async ({ headnote, read }) => {
      const units = ["kPa", "L/s", "mm"] as const;
      for (const wanted of [[], units]) {
        const asked = wanted.flatMap((unit) => ["--unit", unit]);
        await headnote(["chart", "r.headnote", "-o", "x.json", ...args, ...asked]);
        const drawn = JSON.parse(read("x.json"));
        const { config: _, ...spec } = drawn;
        const file = previewFile(opened(FOUR), { ...WISH, choice, units: [...wanted], format: "vega-lite" });
        expect(JSON.parse(file?.text ?? "")).toEqual(drawn);
        const { config: __, ...shown } = viewOf(FOUR, { choice, units: [...wanted] }).spec ?? {};
        expect(uncoloured(shown)).toEqual(uncoloured(spec));
      }
    });
  });

  const shop = { "r.headnote": TWO };
  test.each<[Choice, readonly string[]]>([
    [{ kind: "all" }, []],
    [{ kind: "run", id: "i2" }, ["--run", "i2"]],
    [{ kind: "stage", stage: "cut" }, ["--run", "i2", "--run", "i3"]],
  ])("%j", async (choice, args) => {
    for (const [axis, cd, units] of [
      ["lift", "curtain", []],
      ["lift-ratio", "gap", []],
      ["lift", "curtain", METRIC],
    ] as const) {
      await inShop(shop, async ({ headnote, read }) => {
        const asked = ["--x", axis, "--cd", cd, ...units.flatMap((unit) => ["--unit", unit])];
        await headnote(["chart", "r.headnote", "-o", "x.json", ...asked, ...args]);
        const drawn = JSON.parse(read("x.json"));
        const { config: _, ...spec } = drawn;
        const file = previewFile(opened(TWO), {
          ...WISH,
          choice,
          axis,
          cd,
          units: [...units],
          format: "vega-lite",
        });
        expect(JSON.parse(file?.text ?? "")).toEqual(drawn);
        // On the page it has the editor's colours, and the same structure, data and words.
        const { config: __, ...shown } = viewOf(TWO, { choice, axis, cd, units: [...units] }).spec ?? {};
        expect(uncoloured(shown)).toEqual(uncoloured(spec));
      });
    }
  });
});

/** Without colours. */
function uncoloured(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value).replace(/"#[0-9A-Fa-f]{6}"/g, '"#"'));
}

describe("beside the picture stand", () => {
  test("facts, summary and the table with the lines that its rows come from", () => {
    const text = shopRecord(rows);
    const { facts, tables, summary, name, version, hasRatio } = viewOf(text);
    expect([name, version, hasRatio]).toEqual([FIRST_EXAMPLE_FILE, 7, true]);
    expect(facts.map(({ label }) => label)).toEqual(
      expect.arrayContaining(["port", "bench", "air", "leak", "mounting"]),
    );
    const [table] = tables;
    const lines = text.split("\n");
    expect(summary[0]).toMatch(/^peak .* at 0\.300 in$/);
    expect(table?.summary).toEqual(summary);
    expect(table?.rows.map(({ line, cells }) => lines[line ?? -1]?.includes(cells[0] ?? "?"))).toEqual([
      true,
      true,
      true,
    ]);
    expect(table?.columns.find(({ title }) => title === "corrected flow")?.unit).toBe("cfm");
  });

  test("everything in the units that are asked for, with what the record's own are", () => {
    const view = viewOf(TWO, { units: METRIC });
    expect(view.units.map(({ own, shown, offers }) => [own, shown, offers.includes(own)])).toEqual([
      ["in", "mm", true],
      ["cfm", "L/s", true],
      ["inH2O", "kPa", true],
    ]);
    const { findings: _, units: __, spec: ___, ...words } = view;
    expect(JSON.stringify(words)).not.toMatch(/cfm|inH2O|\d in\b/);
    expect(JSON.stringify(words)).toMatch(/peak \d+\.\d+ L\/s at 7\.62 mm/);
    for (const format of ["csv", "markdown", "vega-lite"] as const) {
      const { text = "" } = previewFile(opened(TWO), { ...WISH, units: METRIC, format }) ?? {};
      expect([format, text]).toEqual([format, expect.not.stringMatching(/cfm|inH2O/)]);
      expect([format, text]).toEqual([format, expect.stringMatching(/L\/s/)]);
    }
  });

  test("of several runs what holds for all, who differs, and from where to where they go", () => {
    const { summary, facts } = viewOf(TWO, { choice: { kind: "stage", stage: "cut" } });
    expect(summary).toEqual([
      expect.stringMatching(/^peaks \d+\.\d \(cylinder 3\) to \d+\.\d cfm \(cylinder 2\), \d+\.\d % apart$/),
    ]);
    expect(facts.find(({ label }) => label === "port")?.words).toBe("intake, intake, draws");
    const all = viewOf(TWO, { choice: { kind: "all" } });
    expect(all.facts.find(({ label }) => label === "stage")?.words).toContain("not stated");
  });

  test("the findings of what is shown and of what all runs share, not those of other runs", () => {
    const broken = TWO.replace("  0.100  28.0  57.2", "  0.100  20.0  57.2").replace(
      "  entry      radiused\n",
      "",
    );
    const codes = (choice: Choice) => viewOf(broken, { choice }).findings.map(({ code }) => code);
    expect(codes({ kind: "run", id: "i3" })).toEqual(expect.arrayContaining(["off-target", "no-entry"]));
    expect(codes({ kind: "run", id: "i1" })).toContain("no-entry");
    expect(codes({ kind: "run", id: "i1" })).not.toContain("off-target");
  });

  test("at most so many findings and rows, with the number of those left out", () => {
    const many = Array.from({ length: 600 }, (_, index) => `  0.${100 + index}  20.0  55.0`).join("\n");
    const { findings, moreFindings, tables } = viewOf(shopRecord(many));
    expect(findings.length).toBe(100);
    expect(moreFindings).toBeGreaterThan(400);
    expect([tables[0]?.rows.length, tables[0]?.more]).toEqual([400, 200]);
  });
});

describe("where nothing can be drawn it says why", () => {
  test.each<[string, string, boolean, RegExp, string | undefined]>([
    ["without a run", "headnote 1\n", false, /no run/, undefined],
    ["without a reading", shopRecord(""), false, /No reading yet/, "run i1"],
    ["without a flow", shopRecord("  0.100  28.0  -\n"), false, /No row gives/, "run i1"],
    [
      "with columns that cannot be read",
      shopRecord(rows).replace("lift[in]", "lft[in]"),
      true,
      /no column lift/,
      "run i1",
    ],
    [
      "with a unit that is none",
      shopRecord(rows).replace("flow[cfm]", "flow[cfmm]"),
      true,
      /cfmm/,
      "flow[cfmm]",
    ],
  ])("%s", (_, text, isBroken, words, blamed) => {
    const view = viewOf(text);
    expect([view.spec, view.isBroken]).toEqual([null, isBroken]);
    expect(view.problem?.text).toMatch(words);
    expect(view.problem?.line ?? undefined).toBe(blamed === undefined ? undefined : lineOf(text, blamed));
  });
});

test("files are named after the record and what is shown of it", () => {
  const named = (choice: Choice, text = TWO) =>
    previewFile(opened(text), { ...WISH, choice, format: "csv" })?.name;
  expect(named({ kind: "all" })).toBe("main");
  expect(named({ kind: "run", id: "i3" })).toBe("main-i3");
  expect(named({ kind: "stage", stage: "cut" })).toBe("main-cut");
  const odd = TWO.replaceAll('"cut"', '"../../à <b>"');
  expect(named({ kind: "stage", stage: "../../à <b>" }, odd)).toBe("main-b");
  expect(previewFile(opened("headnote 1\n"), { ...WISH, format: "csv" })).toBeNull();
  const { text = "" } = previewFile(opened(TWO), { ...WISH, format: "markdown" }) ?? {};
  expect(text).toContain("## i1");
});

test("every sample can be shown, whole and from every line", () => {
  const folder = join(import.meta.dirname, "../../samples");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".headnote"),
  );
  expect(files.length).toBeGreaterThan(15);
  for (const file of files) {
    const service = createService({ files: diskFiles(), config: () => DEFAULT_CONFIG });
    const checked = service.check(join(folder, file));
    if ("problem" in checked) throw new Error(checked.problem);
    const record = { analysis: checked.analysis, findings: checked.findings, service };
    for (const { choice } of picks(record.analysis, blockPictures(record.analysis))) {
      for (const format of ["csv", "markdown", "vega-lite"] as const) {
        expect(previewFile(record, { ...WISH, choice, format })?.text.length).toBeGreaterThan(20);
      }
      const view = previewView(record, { ...WISH, choice }, 1, (path) => path);
      expect(previewViewSchema.safeParse(view).success).toBe(true);
      expect(view.problem).toBeNull();
    }
    for (const choice of [{ kind: "all" }, { kind: "cursor" }] as const) {
      for (const line of [0, 20, 40, 10_000]) {
        const view = previewView(record, { ...WISH, choice, line }, 1, (path) => path);
        expect(previewViewSchema.safeParse(view).success).toBe(true);
      }
    }
  }
});
