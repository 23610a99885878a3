// What the preview is given of a record: the same picture as the command's, and what stands beside it.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { diskFiles } from "../../server/disk/disk-files.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import type { ChartedRecord } from "../../server/service/chart-runs.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { type PreviewWish, previewView } from "../../server/service/preview.ts";
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

describe("the picture is that of the command", () => {
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
    const { facts, tables, name, version, hasRatio } = viewOf(text);
    expect([name, version, hasRatio]).toEqual([FIRST_EXAMPLE_FILE, 7, true]);
    expect(facts.map(({ label }) => label)).toEqual(
      expect.arrayContaining(["port", "bench", "air", "leak", "mounting"]),
    );
    const [table] = tables;
    const lines = text.split("\n");
    expect(table?.summary[0]).toMatch(/^peak .* at 0\.300 in$/);
    expect(table?.rows.map(({ line, cells }) => lines[line]?.includes(cells[0] ?? "?"))).toEqual([
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
    for (const choice of [{ kind: "all" }, { kind: "cursor" }] as const) {
      for (const line of [0, 20, 40, 10_000]) {
        const view = previewView(record, { ...WISH, choice, line }, 1, (path) => path);
        expect(previewViewSchema.safeParse(view).success).toBe(true);
      }
    }
  }
});
