// The line that says which version of the format a file is written in.
import { type Finding, raise } from "../shared/finding.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { headingKeywords, isKeyword } from "./directives/index.ts";
import { version } from "./findings/version.ts";
import { type DirectiveLine, type Line, lineSpan, quoted } from "./tree.ts";

export const FORMAT_VERSION = 1;

/** What is wrong with the version that a line states. */
export function readVersion(line: DirectiveLine, index: number): readonly Finding[] {
  const written = quoted(line, line.keyword.to, line.atoms.at(-1)?.to ?? line.keyword.to);
  const number = /^[0-9]{1,9}$/.test(written) ? Number(written) : 0;
  if (number === FORMAT_VERSION) return [];
  const problem = number > FORMAT_VERSION ? "newer" : written === "" ? "none" : "unreadable";
  return [raise(version, lineSpan(line, index), { problem, written })];
}

/** What is wrong with a file whose first line that says something is no version line. */
export function noVersion(line: Line, index: number): readonly Finding[] {
  if (line.kind === "directive" && isMisspeltVersion(line)) return [];
  const from = line.text.startsWith("\uFEFF") ? 1 : 0;
  const at = { line: index, from, to: from };
  const fix = { title: "Begin the file with its version line", edits: [{ span: at, text: "headnote 1\n" }] };
  return [raise(version, lineSpan(line, index), { problem: "none", written: "" }, { fix })];
}

/** `headnot 1` is reported as a misspelt keyword, and that is enough. */
function isMisspeltVersion(line: DirectiveLine): boolean {
  const keyword = line.keyword.text;
  return !isKeyword(keyword) && nearest(keyword, [...headingKeywords, "headnote"])[0] === "headnote";
}
