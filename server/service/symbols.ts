// The outline of a file: its session, what it defines and its runs.

import type { Entity } from "../../shared/model/model.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { SourceFile } from "../analysis/source-file.ts";

export interface FileSymbol {
  readonly kind: Entity["kind"];
  readonly name: string;
  /** A few words beside the name. */
  readonly detail: string;
  /** First and last line of the block, and the name in it. */
  readonly lines: readonly [first: number, last: number];
  readonly lastColumn: number;
  readonly span: Span;
}

/** One symbol a block, in the order of the file. */
export function symbols({ outline }: SourceFile): readonly FileSymbol[] {
  return outline.blocks.map(({ block, start }): FileSymbol => {
    const { entity, lines } = block;
    let length = lines.length;
    while (length > 1 && lines[length - 1]?.text.trim() === "") length--;
    return {
      kind: entity.kind,
      name: nameOf(entity),
      detail: detailOf(entity),
      lines: [start, start + length - 1],
      lastColumn: outline.lines[start + length - 1]?.text.length ?? 0,
      span: shifted(entity.origin.name, start),
    };
  });
}

/** A symbol and the file that it stands in. */
export interface FoundSymbol {
  readonly file: SourceFile;
  readonly symbol: FileSymbol;
}

/**
 * Symbols of some files whose kind, name or detail hold every word of a query, letter case aside: first those that are
 * called so, then those whose name begins so, then those that have it in their names.
 */
export function matching(files: readonly SourceFile[], query: string): readonly FoundSymbol[] {
  const wanted = query.trim().toLowerCase();
  const words = wanted.split(/\s+/).filter(Boolean);
  return files
    .flatMap((file) => symbols(file).map((symbol) => ({ file, symbol })))
    .filter(({ symbol: { kind, name, detail } }) => {
      const text = `${kind} ${name} ${detail}`.toLowerCase();
      return words.every((word) => text.includes(word));
    })
    .map((found) => ({ found, rank: rankOf(found.symbol, wanted) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ found }) => found);
}

function rankOf({ kind, name }: FileSymbol, wanted: string): number {
  const called = name.toLowerCase();
  if (called === wanted || `${kind} ${called}` === wanted) return 0;
  if (called.startsWith(wanted)) return 1;
  return called.includes(wanted) || kind === wanted ? 2 : 3;
}

function nameOf(entity: Entity): string {
  switch (entity.kind) {
    case "session":
      return `session ${entity.date ?? ""}`.trimEnd();
    case "trace":
    case "ladder":
    case "map":
      return `${entity.kind} of ${entity.of?.id ?? "?"}`;
    case "plate-check":
      return `plate-check ${entity.plate?.id ?? "?"}`;
    default:
      return entity.id === "" ? entity.kind : entity.id;
  }
}

function detailOf(entity: Entity): string {
  if (entity.kind === "run") {
    const count = entity.table?.rows.length ?? 0;
    const points = `${count} ${count === 1 ? "point" : "points"}`;
    return [entity.stage ?? entity.title, points].filter(Boolean).join(", ");
  }
  if ("title" in entity && entity.title !== undefined) return entity.title;
  return entity.kind === "session" ? "" : entity.kind;
}
