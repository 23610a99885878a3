// Finds what is missing in the other records of the workspace.
import type { Finding, Fix } from "../../../shared/finding.ts";
import type { NamedKind } from "../../../shared/model/model.ts";
import { nearest } from "../../../shared/quantity/nearest.ts";
import { folderOf, relativePath } from "../../../shared/text/path.ts";
import { quotedText } from "../../../shared/text/quoted-text.ts";
import type { Analysis } from "../../analysis/project.ts";
import type { Scope } from "../../analysis/scope.ts";
import { defined } from "../../analysis/source-file.ts";
import { includeEdit } from "../include-edit.ts";

/** An include of the record that defines a name, where there is one only. */
export function includeDefinition(
  { scope }: Analysis,
  { args }: Finding,
  others: readonly Scope[],
): Fix | undefined {
  const own = scope.file;
  const [kind, id] = [args["kind"] as NamedKind, String(args["id"])];
  const [home, second] = others.filter(
    ({ file }) => file.path !== own.path && defined(file, kind, id) !== undefined,
  );
  if (home === undefined || second !== undefined) return undefined;
  const path = pathFrom(own.path, home);
  const edit = includeEdit(own, path);
  return edit && { title: `Add include ${quotedText(path)}`, edits: [edit] };
}

/** The path of the only record that is called as the one that is not there, else the one that it is a misspelling of. */
export function rightPath(
  { scope }: Analysis,
  { span, args }: Finding,
  others: readonly Scope[],
): Fix | undefined {
  const written = String(args["path"]);
  const name = written.split("/").at(-1);
  const paths = others
    .filter(({ file }) => file.path !== scope.file.path)
    .map((other) => pathFrom(scope.file.path, other));
  const alike = paths.filter((path) => path.split("/").at(-1) === name);
  const [found, second] = alike.length > 0 ? alike : nearest(written, paths);
  if (found === undefined || second !== undefined) return undefined;
  const path = quotedText(found);
  return { title: `Write ${path}`, edits: [{ span, text: path }] };
}

function pathFrom(path: string, { file }: Scope): string {
  return relativePath(folderOf(path), file.path);
}
