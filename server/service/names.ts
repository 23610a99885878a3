// What a name under the cursor stands for, and where it stands in a file.
import type { NamedKind } from "../../shared/model/model.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { Scope } from "../analysis/scope.ts";
import { isNamed, type Placed, type SourceFile } from "../analysis/source-file.ts";
import { blockAt } from "./line-at.ts";
import { isAt, type Position } from "./position.ts";

/** A name as it stands in a file. */
export interface NamePlace {
  readonly kind: NamedKind;
  readonly id: string;
  /** Counts in the file. */
  readonly span: Span;
  readonly role: "definition" | "use";
}

/** A file, and what its names stand for. */
export type View = Pick<Scope, "file" | "locate">;

/** A name's place in one of several files. */
export interface FoundName extends NamePlace {
  readonly path: string;
}

/** The name at a place of a file. */
export function nameAt({ outline }: SourceFile, position: Position): NamePlace | undefined {
  const placed = blockAt(outline, position.line);
  return placed && namesIn(placed.block, placed.start).find(({ span }) => isAt(span, position));
}

/** All places of a name in a file. */
export function placesOf(file: SourceFile, kind: NamedKind, id: string): readonly NamePlace[] {
  return file.outline.blocks.flatMap(({ block, start }) =>
    namesIn(block, start).filter((name) => name.kind === kind && name.id === id),
  );
}

/**
 * All places of the thing that a name stands for in a scope, in its file and in others: only where the same definition is
 * seen, since two shops may well have an `intake` each.
 */
export function places(
  scope: Scope,
  kind: NamedKind,
  id: string,
  others: readonly View[],
): readonly FoundName[] {
  const target = scope.locate(kind, id);
  const views = [scope, ...others.filter(({ file }) => file.path !== scope.file.path)];
  return views
    .filter(({ locate }) => isSamePlace(locate(kind, id), target))
    .flatMap(({ file }) => placesOf(file, kind, id).map((name) => ({ ...name, path: file.path })));
}

/**
 * Other files with those added that a scope includes and that are not among them, which are seen as the scope sees them:
 * an editor without an open folder knows of no others.
 */
export function withIncluded(scope: Scope, others: readonly View[]): readonly View[] {
  const known = new Set([scope, ...others].map(({ file }) => file.path));
  const included = scope.files.filter(({ path }) => !known.has(path));
  return [...others, ...included.map((file) => ({ file, locate: scope.locate }))];
}

/** Whether two definitions are one. */
export function isSamePlace(a: Placed | undefined, b: Placed | undefined): boolean {
  return a?.path === b?.path && a?.start === b?.start;
}

type Block = SourceFile["outline"]["blocks"][number]["block"];

function namesIn({ entity, uses }: Block, start: number): readonly NamePlace[] {
  const used = uses.map(
    ({ kind, id, span }): NamePlace => ({ kind, id, span: shifted(span, start), role: "use" }),
  );
  if (!isNamed(entity) || entity.id === "") return used;
  const { kind, id, origin } = entity;
  return [{ kind, id, span: shifted(origin.name, start), role: "definition" }, ...used];
}
