// An example in the place of what only the user can know.
import { findProperty } from "../../../grammar/directives/index.ts";
import { headOf } from "../../../grammar/lower-table.ts";
import type { Finding, Fix } from "../../../shared/finding.ts";
import type { Analysis } from "../../analysis/project.ts";
import { namesIn } from "../../analysis/source-file.ts";
import { blockAt } from "../line-at.ts";

export function condition(analysis: Analysis, finding: Finding, keyword: string): Fix | undefined {
  const [bench] = analysis.scope.files.flatMap((file) => [...namesIn(file, "bench")]);
  const example =
    keyword === "bench" && bench !== undefined ? `bench ${bench}` : findProperty("session", keyword)?.example;
  // Where air is stated but cannot be used, a second line would not help.
  const text = analysis.scope.file.outline.lines[finding.span.line]?.text.trim() ?? "";
  return example === undefined || text.startsWith(keyword)
    ? undefined
    : statement(analysis, finding, example);
}

/** The line that the finding itself gives as an example. */
export function stated(analysis: Analysis, finding: Finding): Fix | undefined {
  return statement(analysis, finding, String(finding.args["example"] ?? ""));
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

/** A keyword that stands alone, with the values of its example. */
export function completed({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const line = scope.file.outline.lines[span.line];
  const placed = blockAt(scope.file.outline, span.line);
  if (placed === undefined || line?.kind !== "directive" || line.atoms.length > 0) return undefined;
  const { keyword } = line;
  const example = findProperty(placed.block.heading.block, keyword.text)?.example;
  if (example === undefined) return undefined;
  const values = example.slice(keyword.text.length).trim();
  const at = { line: span.line, from: keyword.to, to: keyword.to };
  return { title: `Add an example: ${example}`, edits: [{ span: at, text: ` ${values}` }] };
}

/** A head for rows that have none; where only a column is missing, its place among the others is the user's choice. */
export function addHead({ scope }: Analysis, { span, args }: Finding): Fix | undefined {
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
