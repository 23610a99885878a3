// What may stand between quotes where a file is named: records to include, logs for a trace, and the columns of a log.
import type { Form } from "../../grammar/directive.ts";
import { folderOf, relativePath, resolvePath } from "../../shared/text/path.ts";
import { escapedText } from "../../shared/text/quoted-text.ts";
import { logColumns } from "../analysis/log-file.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Offer } from "./offer.ts";
import type { OpenLine } from "./open-line.ts";
import { slotsAfter } from "./slot-at.ts";

/** Records that are not included yet. */
export function includeOffers({ file, includes }: Scope, paths: readonly string[]): readonly Offer[] {
  return pathOffers(file.path, paths, [file.path, ...includes.map(({ path }) => path)]);
}

/** Logs that no other trace of the file names; behind a log's name, in the text `log`, the columns that the line has not. */
export function logOffers(
  { file }: Scope,
  form: Form,
  { line, before }: OpenLine,
  paths: readonly string[],
  log: string | undefined,
): readonly Offer[] {
  const types = slotsAfter(form, before).slots.map(({ slot }) => slot.type.kind);
  if (types.includes("text")) {
    const folder = folderOf(file.path);
    const named = file.others.flatMap(({ entity, start }) => {
      const stated = entity.kind === "trace" ? entity.origin.lines.get("log") : undefined;
      const isOwn = stated !== undefined && start + stated.line === line;
      return entity.kind !== "trace" || entity.log === undefined || isOwn
        ? []
        : [resolvePath(folder, entity.log.path)];
    });
    return pathOffers(file.path, paths, named);
  }
  if (!types.includes("channel")) return [];
  return logColumns(log ?? "")
    .map(escapedText)
    .filter((name) => !before.includes(`"${name}"`))
    .map((name) => ({ label: name, insert: name, kind: "column", detail: "a column of the log" }));
}

/** Paths as seen from a file, the nearest first, without those that are named already. */
function pathOffers(own: string, paths: readonly string[], known: readonly string[]): readonly Offer[] {
  const folder = folderOf(own);
  return paths
    .filter((path) => !known.includes(path))
    .map((path) => relativePath(folder, path))
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
    .map((path) => ({ label: path, insert: path, kind: "file", detail: "" }));
}
