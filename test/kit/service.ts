// Opens a text with a cursor (`$0`) as an editor would; lines `#- path` begin further files.
import type { Analysis } from "../../server/analysis/project.ts";
import { createProject } from "../../server/analysis/project.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { findingsOf, type Judged } from "../../server/service/findings.ts";
import type { Position } from "../../server/service/position.ts";
import type { Edit } from "../../shared/text/edit.ts";
import { applyEdits } from "../../shared/text/edit.ts";

export interface Opened {
  readonly analysis: Analysis;
  readonly position: Position;
  readonly findings: readonly Judged[];
  readonly text: string;
  readonly analyse: (path: string) => Analysis;
  readonly paths: readonly string[];
}

/** The first file, the cursor in it, and everything that the service needs. */
export function open(fixture: string): Opened {
  const files = exampleFiles(fixture);
  const marked = files[0]?.text ?? "";
  const at = marked.indexOf("$0");
  const before = at < 0 ? "" : marked.slice(0, at);
  const lines = before.split("\n");
  const position = { line: lines.length - 1, column: lines.at(-1)?.length ?? 0 };
  const text = marked.replace("$0", "");
  const all = files.map((file, index) => (index === 0 ? { ...file, text } : file));
  const project = createProject(memoryFiles(all, ""));
  const analyse = (path: string): Analysis => {
    const analysis = project.analyse(path);
    if ("problem" in analysis) throw new Error(`${path}: ${analysis.problem}`);
    return analysis;
  };
  const analysis = analyse(FIRST_EXAMPLE_FILE);
  const findings = findingsOf(analysis, DEFAULT_CONFIG);
  return { analysis, position, findings, text, analyse, paths: all.map(({ path }) => path) };
}

/** The text after edits of it; an edit may insert lines. */
export function edited(text: string, edits: readonly Edit[]): string {
  return applyEdits(text.split("\n"), edits).join("\n");
}

/** A record that most features can be shown on; `rows` and what stands below them are the fixture's own. */
export function shopRecord(rows: string): string {
  return `headnote 1

bench north "quick bench"
  shows      flow
  repeat     0.35 %
  within     0.2 inH2O

port intake "as it came"
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in

session 2026-03-02
  bench      north
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused

run i1
  lift[in]  depression[inH2O]  flow[cfm]
${rows}`;
}
