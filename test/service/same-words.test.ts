// What is found of a port is said in the same words wherever it is said: check, hover, preview, and the table as text and as a report.
import { describe, expect, test } from "vitest";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { hover } from "../../server/service/hover.ts";
import { type PreviewWish, previewView } from "../../server/service/preview.ts";
import { createService } from "../../server/service/service.ts";
import { inShop } from "../kit/command.ts";
import { shopRecord } from "../kit/service.ts";

const LOOK = {
  width: 760,
  colours: { kind: "light", background: "#ffffff", text: "#1d2126", font: "" },
} as const;

/** The findings of a record, its names, and what its preview shows with the cursor on a line. */
function opened(text: string) {
  const service = createService({ files: memoryFiles(exampleFiles(text), ""), config: () => DEFAULT_CONFIG });
  const checked = service.check(FIRST_EXAMPLE_FILE);
  if ("problem" in checked) throw new Error(checked.problem);
  const { analysis, findings } = checked;
  const wish: Omit<PreviewWish, "line"> = {
    shown: null,
    choice: { kind: "cursor" },
    axis: "lift",
    cd: "curtain",
    lifts: null,
    units: [],
    look: LOOK,
  };
  const view = (line: number) =>
    previewView({ analysis, findings, service }, { ...wish, line }, 1, (path) => path);
  return { analysis, findings, view };
}

const rows = (...lines: readonly string[]) => lines.map((line) => `  ${line}\n`).join("");
const timed = (text: string) =>
  text
    .replace("  repeat     0.35 %\n", "  repeat     0.35 %\n  quick      2 s\n")
    .replace("flow[cfm]\n", "flow[cfm]  settle[s]\n");
const SECOND_BENCH = `bench slow
  shows      flow
  repeat     0.35 %
run i2
  bench      slow
  stage      "as cast"
  lift[in]  depression[inH2O]  flow[cfm]
${rows("0.300 28.0 150.2", "0.400 28.0 184.1", "0.500 28.0 184.9")}`;

/** Each with the row, or the heading, whose hover tells it too. */
const CASES: readonly (readonly [code: string, text: string, at: string])[] = [
  [
    "fall-back",
    shopRecord(rows("0.300 28.0 150.0", "0.400 28.0 185.0", "0.500 28.0 178.0", "0.600 28.0 180.0")),
    "  0.500 28.0 178.0",
  ],
  [
    "fall-back-not-resolved",
    shopRecord(rows("0.300 28.0 185.0", "0.400 28.0 183.7", "0.500 28.0 188.0")),
    "  0.400 28.0 183.7",
  ],
  [
    "flat-top",
    timed(
      shopRecord(
        rows("0.300 28.0 150.0 5", "0.400 28.0 185.0 6", "0.500 28.0 185.9 7.4", "0.600 28.0 185.6 6.8"),
      ),
    ),
    "  0.500 28.0 185.9 7.4",
  ],
  [
    "direction-dependent",
    shopRecord(
      rows(
        "0.200 28.0 108.0",
        "0.300 28.0 150.0",
        "0.400 28.0 178.0",
        "0.300 28.0 146.0",
        "0.200 28.0 107.9",
        "0.100 28.0 55.0",
      ),
    ),
    "  0.300 28.0 146.0",
  ],
  [
    "hidden-fall-back",
    shopRecord(rows("0.300 28.0 150.0", "0.400 28.0 185.0", "0.500 28.0 178.0"))
      .replace("run i1\n", 'run i1\n  stage "as cast"\n')
      .concat(SECOND_BENCH),
    "run i2",
  ],
];

describe("what is said of a port", () => {
  test.each(CASES)("%s", async (code, text, at) => {
    const { analysis, findings, view } = opened(text);
    const found = findings.filter(({ finding }) => finding.code === code);
    expect(found).toHaveLength(1);
    const [{ message, finding } = { message: "", finding: undefined }] = found;
    expect(message).toMatch(/\d/);

    const line = text.split("\n").lastIndexOf(at);
    const hovered = hover(analysis, { line, column: 0 })?.text.replaceAll("\\", "");
    expect(hovered).toContain(message);

    const shown = view(finding?.span.line ?? 0).findings;
    expect(shown.map((each) => each.message)).toContain(message);

    await inShop({ "a.headnote": text }, async ({ headnote }) => {
      const json = JSON.parse((await headnote(["check", "a.headnote", "--format", "json"])).out);
      expect(json.findings.map((each: { message: string }) => each.message)).toContain(message);
      expect((await headnote(["check", "a.headnote"])).out).toContain(`[${code}]: ${message}`);
      expect((await headnote(["table", "a.headnote"])).out).toContain(`${code}: ${message}`);
      const report = (await headnote(["table", "a.headnote", "--format", "markdown"])).out;
      expect(report.replaceAll("\\", "")).toContain(`${code}: ${message}`);
    });
  });

  test("a picture shades a fall-back and writes its depth as the finding does", () => {
    const [, text] = CASES[0] ?? [];
    const { findings, view } = opened(text ?? "");
    const depth = findings.find(({ finding }) => finding.code === "fall-back")?.finding.args["depth"];
    expect(depth).toBe("3.8 %");
    expect(JSON.stringify(view(0).spec)).toMatch(/3\.8\D{0,3}%/);
  });
});
