// One file, read: its lines, its blocks, and what it defines.
import type { BlockMemory } from "../../grammar/lower-block.ts";
import { type Outline, outline, type PlacedBlock } from "../../grammar/outline.ts";
import { type ReadText, readText } from "../../grammar/read-lines.ts";
import { difference, remade, replaced } from "../../shared/difference.ts";
import type { Entity, NamedKind, Run, Session } from "../../shared/model/model.ts";

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
  readonly read: ReadText;
  readonly outline: Outline;
  readonly placed: readonly Placed[];
  readonly session: Placed<Session> | undefined;
  readonly runs: readonly Placed<Run>[];
  /** All but the runs, of which a long record has thousands. */
  readonly others: readonly Placed[];
  readonly names: Names;
}

/** What a file names, by where it stands in `placed`. */
interface Names {
  /** By kind and id; of several with one id the first. */
  readonly first: ReadonlyMap<NamedKind, ReadonlyMap<string, number>>;
  /** The others, in order. */
  readonly again: readonly number[];
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
  const read = readText(text, previous?.read);
  const folded = outline(read.lines, memory, previous?.outline);
  const earlier = previous && { of: previous.outline.blocks, to: previous.placed };
  const place = ({ start, block }: PlacedBlock): Placed => ({ entity: block.entity, start, path });
  const placed = remade(folded.blocks, earlier, place);
  const session = placed.find(isSession);
  const change = previous && changeOf(placed, previous.placed);
  const runs = chosen(placed, isRun, change, previous?.runs);
  const others = chosen(placed, isNoRun, change, previous?.others);
  const known = change !== undefined && isNamedAlike(change) ? previous?.names : undefined;
  const names = known ?? namesOf(placed);
  return { path, text, read, outline: folded, placed, session, runs, others, names };
}

/** The thing of that kind and name, if the file defines it. */
export function defined({ placed, names }: SourceFile, kind: NamedKind, id: string): Placed | undefined {
  const index = names.first.get(kind)?.get(id);
  return index === undefined ? undefined : placed[index];
}

/** The names that a file gives to things of a kind. */
export function namesIn({ names }: SourceFile, kind: NamedKind): Iterable<string> {
  return names.first.get(kind)?.keys() ?? [];
}

function namesOf(placed: readonly Placed[]): Names {
  const first = new Map<NamedKind, Map<string, number>>();
  const again: number[] = [];
  placed.forEach(({ entity }, index) => {
    if (!isNamed(entity) || entity.id === "") return;
    const known = first.get(entity.kind);
    if (known === undefined) first.set(entity.kind, new Map<string, number>().set(entity.id, index));
    else if (known.has(entity.id)) again.push(index);
    else known.set(entity.id, index);
  });
  return { first, again };
}

/** Where the things of a file differ from those of its previous version. */
interface Change {
  readonly gone: readonly Placed[];
  readonly added: readonly Placed[];
}

function changeOf(now: readonly Placed[], then: readonly Placed[]): Change {
  const { before, after } = difference(now, then);
  return {
    gone: then.slice(before, then.length - after),
    added: now.slice(before, now.length - after),
  };
}

/** Those things of a file that are of some kind; only what has changed is looked at, where `earlier` has the others. */
function chosen<P extends Placed>(
  placed: readonly Placed[],
  isOne: (each: Placed) => each is P,
  change: Change | undefined,
  earlier: readonly P[] = [],
): readonly P[] {
  const gone = change?.gone.filter(isOne);
  const added = change?.added.filter(isOne);
  if (gone?.length === 0 && added?.length === 0) return earlier;
  const [first] = gone ?? [];
  if (gone === undefined || added === undefined || first === undefined) return placed.filter(isOne);
  const from = earlier.indexOf(first);
  return replaced(earlier, from, from + gone.length, added);
}

/** Whether the same names stand in the same places: most edits change what a thing says, and not what it is called. */
function isNamedAlike({ gone, added }: Change): boolean {
  return (
    added.length === gone.length &&
    added.every(({ entity }, index) => {
      const other = gone[index]?.entity;
      return entity.kind === other?.kind && nameOf(entity) === nameOf(other);
    })
  );
}

function nameOf(entity: Entity): string | undefined {
  return isNamed(entity) ? entity.id : undefined;
}

function isSession(placed: Placed): placed is Placed<Session> {
  return placed.entity.kind === "session";
}

function isRun(placed: Placed): placed is Placed<Run> {
  return placed.entity.kind === "run";
}

function isNoRun(placed: Placed): placed is Placed {
  return !isRun(placed);
}

/** Whether an entity has a name that others can use. */
export function isNamed(entity: Entity): entity is Extract<Entity, { readonly id: string }> {
  return "id" in entity;
}
