// Takes out what stands twice, has no place, or leads round in a circle.
import type { Finding, Fix } from "../../../shared/finding.ts";
import { lineTakenOut } from "../../../shared/text/edit.ts";
import type { Analysis } from "../../analysis/project.ts";

export function removeLine({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  // Columns that stand twice are part of a line, not a line.
  if (text.includes("[")) return undefined;
  return { title: "Take this line out", edits: [lineTakenOut(span.line, text.length)] };
}

/** What the finding is raised at, with the blanks before it. */
export function removeWords({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  const words = text.slice(span.from, span.to);
  if (words.trim() === "") return undefined;
  const from = text.slice(0, span.from).trimEnd().length;
  return { title: `Take '${words}' out`, edits: [{ span: { ...span, from }, text: "" }] };
}
