// One file, read: its lines, its blocks, and what it defines.
import type { BlockMemory } from "../../grammar/lower-block.ts";
import { type Outline, outline } from "../../grammar/outline.ts";
import { readLines } from "../../grammar/read-lines.ts";
import type { BlockKind, Entities, Entity, NamedKind, Run, Session } from "../../shared/model/model.ts";

/** An entity and the line of its file that its block begins on. */
export interface Placed<E extends Entity = Entity> {
  readonly entity: E;
  readonly start: number;
  readonly path: string;
}

/** One version of one file. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly outline: Outline;
  readonly session: Placed<Session> | undefined;
  readonly runs: readonly Placed<Run>[];
  /** By kind and id; of several with one id the first. */
  readonly defines: ReadonlyMap<NamedKind, ReadonlyMap<string, Placed>>;
  readonly placed: readonly Placed[];
}

/**
 * Reads a file; lines that are the same as in the previous version keep what was read of them, and so do the blocks that
 * `memory` knows.
 */
export function sourceFile(
  path: string,
  text: string,
  memory: BlockMemory,
  previous?: SourceFile,
): SourceFile {
  const before = previous && { text: previous.text, lines: previous.outline.lines };
  const read = outline(readLines(text, before), memory);
  const placed = read.blocks.map(({ start, block }) => ({ entity: block.entity, start, path }));
  const defines = new Map<NamedKind, Map<string, Placed>>();
  let session: Placed<Session> | undefined;
  const runs: Placed<Run>[] = [];
  for (const each of placed) {
    const { entity } = each;
    if (isPlaced("session", each)) session ??= each;
    else if (isPlaced("run", each)) runs.push(each);
    if (!isNamed(entity) || entity.id === "") continue;
    const known = defines.get(entity.kind);
    if (known === undefined) defines.set(entity.kind, new Map([[entity.id, each]]));
    else if (!known.has(entity.id)) known.set(entity.id, each);
  }
  return { path, text, outline: read, session, runs, defines, placed };
}

function isPlaced<K extends BlockKind>(kind: K, placed: Placed): placed is Placed<Entities[K]> {
  return placed.entity.kind === kind;
}

/** Whether an entity has a name that others can use. */
export function isNamed(entity: Entity): entity is Extract<Entity, { readonly id: string }> {
  return "id" in entity;
}
