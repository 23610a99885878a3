// Mends that a finding does not carry itself, because they need more of the file than its rule looks at.
import { findProperty } from "../../grammar/directives/index.ts";
import { headOf } from "../../grammar/lower-table.ts";
import type { Finding, Fix } from "../../shared/finding.ts";
import { lineTakenOut } from "../../shared/text/edit.ts";
import type { Analysis } from "../analysis/project.ts";
import { namesIn } from "../analysis/source-file.ts";
import { blockAt } from "./line-at.ts";

type Mend = (analysis: Analysis, finding: Finding) => Fix | undefined;

/** Mends that say nothing new about a measurement, by code; a new one is one line. */
const MENDS: Readonly<Record<string, Mend>> = {
  "unused-allow": removeComment,
};

/**
 * Proposals, by code: an example in the place of what only the user can know, or a written line taken out. Each is for the
 * user to choose and to put right, so that none may be applied unseen.
 */
const PROPOSALS: Readonly<Record<string, Mend>> = {
  "missing-line": (analysis, finding) => statement(analysis, finding, String(finding.args["example"] ?? "")),
  "no-bench": (analysis, finding) => condition(analysis, finding, "bench"),
  "no-target": (analysis, finding) => condition(analysis, finding, "target"),
  "no-air": (analysis, finding) => condition(analysis, finding, "air"),
  "no-leak": (analysis, finding) => condition(analysis, finding, "leak"),
  "no-entry": (analysis, finding) => statement(analysis, finding, String(finding.args["example"] ?? "")),
  "repeated-line": removeLine,
  // Which cell was left out cannot be told, only that the last have none.
  "missing-cell": fillCells,
  "missing-columns": addHead,
};

/** The mend of a finding of that code, where there is one that may be applied unseen. */
export function mendOf(analysis: Analysis, finding: Finding): Fix | undefined {
  return MENDS[finding.code]?.(analysis, finding);
}

/** A proposal for a finding of that code, where there is one; it states what the user may know better. */
export function proposalOf(analysis: Analysis, finding: Finding): Fix | undefined {
  return PROPOSALS[finding.code]?.(analysis, finding);
}

function condition(analysis: Analysis, finding: Finding, keyword: string): Fix | undefined {
  const [bench] = analysis.scope.files.flatMap((file) => [...namesIn(file, "bench")]);
  const example =
    keyword === "bench" && bench !== undefined ? `bench ${bench}` : findProperty("session", keyword)?.example;
  // Where air is stated but cannot be used, a second line would not help.
  const text = analysis.scope.file.outline.lines[finding.span.line]?.text.trim() ?? "";
  return example === undefined || text.startsWith(keyword)
    ? undefined
    : statement(analysis, finding, example);
}

/** A line behind the last property of the block that the finding stands in. */
function statement({ scope }: Analysis, { span }: Finding, example: string): Fix | undefined {
  const placed = blockAt(scope.file.outline, span.line);
  if (placed === undefined || example === "") return undefined;
  const [keyword = "", ...rest] = example.split(" ");
  const lines = placed.block.lines;
  let last = 0;
  for (let index = 0; index < lines.length; index++) if (lines[index]?.kind === "directive") last = index;
  const line = placed.start + last;
  const end = scope.file.outline.lines[line]?.text.length ?? 0;
  const text = `\n  ${keyword.padEnd(10)} ${rest.join(" ")}`;
  return { title: `Add an example: ${example}`, edits: [{ span: { line, from: end, to: end }, text }] };
}

function removeComment({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  const from = text.lastIndexOf("#", span.from);
  if (from < 0) return undefined;
  const kept = text.slice(0, from).trimEnd();
  const edit =
    kept === ""
      ? lineTakenOut(span.line, text.length)
      : { span: { line: span.line, from: kept.length, to: text.length }, text: "" };
  return { title: "Take the comment out", edits: [edit] };
}

function removeLine({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  // Columns that stand twice are part of a line, not a line.
  if (text.includes("[")) return undefined;
  return { title: "Take this line out", edits: [lineTakenOut(span.line, text.length)] };
}

function fillCells(_: Analysis, { span, args }: Finding): Fix | undefined {
  const missing = Number(args["columns"]) - Number(args["cells"]);
  if (!(missing > 0)) return undefined;
  const text = "  -".repeat(missing);
  return {
    title: "Write '-' for what was not read",
    edits: [{ span: { line: span.line, from: span.to, to: span.to }, text }],
  };
}

/** A head for rows that have none; where only a column is missing, its place among the others is the user's choice. */
function addHead({ scope }: Analysis, { span, args }: Finding): Fix | undefined {
  const placed = blockAt(scope.file.outline, span.line);
  if (placed === undefined || !String(args["missing"]).includes("line")) return undefined;
  const names = placed.block.entity.kind === "run" ? ["lift", "depression", "flow"] : [];
  const head = names.length > 0 ? names.map(headOf).join("  ") : String(args["example"] ?? "");
  const first = placed.block.lines.findIndex((line) => line.kind === "row");
  const line = first < 0 ? span.line : placed.start + first;
  const at = first < 0 ? (scope.file.outline.lines[line]?.text.length ?? 0) : 0;
  const text = first < 0 ? `\n  ${head}` : `  ${head}\n`;
  return { title: `Add an example: ${head}`, edits: [{ span: { line, from: at, to: at }, text }] };
}
