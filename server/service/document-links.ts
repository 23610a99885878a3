// The files that a record names: its includes and the logs of its traces.
import { folderOf, resolvePath } from "../../shared/text/path.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";

export interface FileLink {
  readonly path: string;
  readonly span: Span;
}

/** Links to files inside the workspace, whether they are there or not. */
export function documentLinks({ scope }: Pick<Analysis, "scope">): readonly FileLink[] {
  const includes = scope.includes
    .filter(({ problem }) => problem !== "outside")
    .map(({ path, include }) => ({ path, span: include.span }));
  const logs = scope.file.others.flatMap(({ entity, start }) => {
    const line = entity.kind === "trace" ? entity.origin.lines.get("log") : undefined;
    if (entity.kind !== "trace" || entity.log === undefined || line === undefined) return [];
    const text = scope.file.outline.lines[start + line.line]?.text ?? "";
    const written = /"(?:[^"\\]|\\.)*"/.exec(text);
    if (written === null) return [];
    const from = written.index;
    const span = { line: start + line.line, from, to: from + written[0].length };
    return [{ path: resolvePath(folderOf(scope.file.path), entity.log.path), span }];
  });
  return [...includes, ...logs];
}
