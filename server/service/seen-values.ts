// Values that other blocks state in the same place: a valve, a target or a stage is often the same again.
import { bind } from "../../grammar/bind.ts";
import type { Property } from "../../grammar/directive.ts";
import type { PlacedBlock } from "../../grammar/outline.ts";
import type { DirectiveLine } from "../../grammar/tree.ts";
import type { Entity } from "../../shared/model/model.ts";
import type { Scope } from "../analysis/scope.ts";
import { isNamed, type SourceFile } from "../analysis/source-file.ts";

/** A value as it is written, and the block that states it first. */
export interface SeenValue {
  readonly text: string;
  readonly block: string;
}

/** Those of the file and its includes but for the one on the line itself: the most frequent first, each once. */
export function seenValues(
  { file, files }: Scope,
  property: Property,
  slot: string,
  line: number,
): readonly SeenValue[] {
  return seenIn(files, property, slot, { path: file.path, line });
}

/** Those of some files, but for the one that stands at a place. */
export function seenIn(
  files: readonly SourceFile[],
  property: Property,
  slot: string,
  own?: { readonly path: string; readonly line: number },
): readonly SeenValue[] {
  const seen = new Map<string, { readonly block: string; count: number }>();
  // Lines that read alike share their node, and most of what is stated again reads alike.
  const values = new Map<DirectiveLine, string>();
  for (const { path, outline } of files) {
    for (const placed of outline.blocks) {
      for (const { line, index } of linesOf(placed, property)) {
        if (path === own?.path && placed.start + index === own.line) continue;
        const text = values.get(line) ?? valueIn(line, property, slot);
        values.set(line, text);
        const known = seen.get(text);
        if (known !== undefined) known.count++;
        else if (text !== "") seen.set(text, { block: wordsFor(placed.block.entity), count: 1 });
      }
    }
  }
  return [...seen].sort((a, b) => b[1].count - a[1].count).map(([text, { block }]) => ({ text, block }));
}

/** Nothing where the line cannot be read in full. */
function valueIn(line: DirectiveLine, property: Property, slot: string): string {
  const { places, complete } = bind(property, line);
  const place = places[slot];
  const isSound = complete && line.findings.length === 0;
  return place === undefined || !isSound ? "" : line.text.slice(place.from, place.to);
}

interface StatedLine {
  readonly line: DirectiveLine;
  /** Counts in the block. */
  readonly index: number;
}

/** The lines of a block that state a property. */
function linesOf({ block }: PlacedBlock, { keyword, repeatable }: Property): readonly StatedLine[] {
  const first = block.entity.origin.lines.get(keyword)?.line;
  if (first === undefined) return [];
  const own = block.lines[first];
  if (!repeatable) return own?.kind === "directive" ? [{ line: own, index: first }] : [];
  return block.lines.slice(first).flatMap((line, offset): StatedLine[] => {
    const isStated = line.kind === "directive" && line.keyword.text === keyword;
    return isStated ? [{ line, index: first + offset }] : [];
  });
}

function wordsFor(entity: Entity): string {
  if (isNamed(entity)) return `${entity.kind} ${entity.id}`;
  return entity.kind === "session" && entity.date !== undefined
    ? `session ${entity.date}`
    : `another ${entity.kind}`;
}
