// Names that may be defined in a file which could not be read: they are told of once, where that file is included.
import type { Related } from "../../shared/finding.ts";
import type { NamedKind } from "../../shared/model/model.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { ResolvedInclude, Scope } from "../analysis/scope.ts";

/** A name that stands for nothing the file can see, and where in the file it is used. */
export interface UnknownName {
  readonly kind: NamedKind;
  readonly id: string;
  readonly span: Span;
}

/** More names than these are counted. */
const MOST_NAMED = 3;

export function unknownNames({ file, locate }: Scope): readonly UnknownName[] {
  const unknown: UnknownName[] = [];
  for (const { start, block } of file.outline.blocks) {
    for (const { kind, id, span } of block.uses) {
      if (locate(kind, id) === undefined) unknown.push({ kind, id, span: shifted(span, start) });
    }
  }
  return unknown;
}

/** The include at which names are told of that nothing defines: the first of the file that could not be read. */
export function unreadInclude({ includes }: Scope): ResolvedInclude | undefined {
  return includes.find(({ problem }) => problem === "missing" || problem === "outside");
}

/** What the finding at an include goes on with, and the places that it speaks of. */
export function unreadNames(
  scope: Scope,
  include: ResolvedInclude,
): { readonly names: string; readonly related: readonly Related[] } {
  const unknown = include === unreadInclude(scope) ? unknownNames(scope) : [];
  const names = [...new Set(unknown.map(nameOf))];
  const related = unknown.map((use) => ({ span: use.span, message: `${nameOf(use)} is used here` }));
  if (names.length === 0) return { names: "", related };
  const more = names.length - MOST_NAMED;
  const shown =
    more > 0 ? [...names.slice(0, MOST_NAMED), `${more} more name${more === 1 ? "" : "s"}`] : names;
  const all = [shown.slice(0, -1).join(", "), ...shown.slice(-1)].filter((part) => part !== "");
  return { names: `; ${all.join(" and ")} could not be looked up`, related };
}

function nameOf({ kind, id }: UnknownName): string {
  return `${kind} '${id}'`;
}
