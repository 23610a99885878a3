// One file, read: its lines, its blocks, and what it defines.
import type { BlockMemory } from "../../grammar/lower-block.ts";
import { type Outline, outline } from "../../grammar/outline.ts";
import { readLines } from "../../grammar/read-lines.ts";
import { difference, remade } from "../../shared/difference.ts";
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
  readonly placed: readonly Placed[];
  readonly session: Placed<Session> | undefined;
  readonly runs: readonly Placed<Run>[];
  /** By kind and id, where in `placed` it stands; of several with one id the first. */
  readonly names: Names;
}

type Names = ReadonlyMap<NamedKind, ReadonlyMap<string, number>>;

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
  const read = outline(readLines(text, before), memory, previous?.outline);
  const earlier = previous && { of: previous.outline.blocks, to: previous.placed };
  const placed = remade(
    read.blocks,
    earlier,
    ({ start, block }): Placed => ({
      entity: block.entity,
      start,
      path,
    }),
  );
  const session = placed.find((each) => isPlaced("session", each));
  const runs = placed.filter((each) => isPlaced("run", each));
  const isNamedAlike = previous !== undefined && namesAlike(placed, previous.placed);
  const names = isNamedAlike ? previous.names : namesOf(placed);
  return { path, text, outline: read, placed, session, runs, names };
}

/** The thing of that kind and name, if the file defines it. */
export function defined({ placed, names }: SourceFile, kind: NamedKind, id: string): Placed | undefined {
  const index = names.get(kind)?.get(id);
  return index === undefined ? undefined : placed[index];
}

/** The names that a file gives to things of a kind. */
export function namesIn({ names }: SourceFile, kind: NamedKind): Iterable<string> {
  return names.get(kind)?.keys() ?? [];
}

function namesOf(placed: readonly Placed[]): Names {
  const names = new Map<NamedKind, Map<string, number>>();
  for (const [index, { entity }] of placed.entries()) {
    if (!isNamed(entity) || entity.id === "") continue;
    const known = names.get(entity.kind);
    if (known === undefined) names.set(entity.kind, new Map([[entity.id, index]]));
    else if (!known.has(entity.id)) known.set(entity.id, index);
  }
  return names;
}

/** Whether the same names stand in the same places: most edits change what a thing says, and not what it is called. */
function namesAlike(now: readonly Placed[], then: readonly Placed[]): boolean {
  if (now.length !== then.length) return false;
  const { before, after } = difference(now, then);
  return now.slice(before, now.length - after).every(({ entity }, index) => {
    const other = then[before + index]?.entity;
    return entity.kind === other?.kind && nameOf(entity) === nameOf(other);
  });
}

function nameOf(entity: Entity): string | undefined {
  return isNamed(entity) ? entity.id : undefined;
}

function isPlaced<K extends BlockKind>(kind: K, placed: Placed): placed is Placed<Entities[K]> {
  return placed.entity.kind === kind;
}

/** Whether an entity has a name that others can use. */
export function isNamed(entity: Entity): entity is Extract<Entity, { readonly id: string }> {
  return "id" in entity;
}
