// The edit that includes another record, behind the includes that a file has.
import type { Edit } from "../../shared/text/edit.ts";
import { quotedText } from "../../shared/text/quoted-text.ts";
import type { SourceFile } from "../analysis/source-file.ts";

/** `path` as seen from the file's folder; nothing for a file that does not say its version, which stands before all else. */
export function includeEdit({ outline }: SourceFile, path: string): Edit | undefined {
  const last = outline.includes.at(-1)?.span.line;
  const version = outline.lines.findIndex(
    (line) => line.kind === "directive" && line.keyword.text === "headnote",
  );
  const line = last ?? version;
  const to = outline.lines[line]?.text.length;
  return to === undefined
    ? undefined
    : { span: { line, from: to, to }, text: `\ninclude ${quotedText(path)}` };
}
