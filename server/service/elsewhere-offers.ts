// What the other records of the workspace have where the file itself has nothing to offer: names with the include that
// brings them in, and the texts that others state.
import type { Form, Property } from "../../grammar/directive.ts";
import type { NamedKind } from "../../shared/model/model.ts";
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { defined, isNamed, namesIn, type Placed } from "../analysis/source-file.ts";
import type { Completion } from "./completion.ts";
import { includeEdit } from "./include-edit.ts";
import { escaped } from "./markdown.ts";
import { isSamePlace } from "./names.ts";
import type { Offer } from "./offer.ts";
import { formOf, type OpenLine, openLine } from "./open-line.ts";
import type { Position } from "./position.ts";
import { seenIn } from "./seen-values.ts";
import { slotsAfter } from "./slot-at.ts";
import { unquoted } from "./text-offers.ts";

/** What is missing at a place and may stand in other records. */
export interface Sought {
  readonly open: OpenLine;
  readonly names: readonly NamedKind[];
  /** A line of one text, such as a stage, and the slot of that text. */
  readonly text: { readonly property: Property; readonly slot: string } | undefined;
}

/** `undefined` where other records could not help. */
export function soughtElsewhere({ scope }: Analysis, position: Position): Sought | undefined {
  const open = openLine(scope.file.outline, position);
  const form = open.before.trim() === "" ? undefined : formOf(open);
  if (form === undefined) return undefined;
  const { slots } = slotsAfter(form, open.before);
  const names = slots.flatMap(({ slot: { type } }) => (type.kind === "reference" ? [type.to] : []));
  const [first] = slots;
  const text = isOneText(form) && first !== undefined ? { property: form, slot: first.name } : undefined;
  return names.length === 0 && text === undefined ? undefined : { open, names, text };
}

/** What may be stated many times, as a note, is said anew each time. */
function isOneText(form: Form): form is Property {
  const slots = Object.values(form.slots);
  return form.form === "property" && !form.repeatable && slots.length === 1 && slots[0]?.type.kind === "text";
}

/** The nearest records first, of them those that only define things. */
export function elsewhereOffers(
  { scope }: Analysis,
  { open, names, text }: Sought,
  others: readonly Scope[],
): readonly Completion[] {
  const near = others
    .filter(({ file }) => file.path !== scope.file.path)
    .map((other) => ({ other, path: relativePath(folderOf(scope.file.path), other.file.path) }))
    .sort((a, b) => farness(a) - farness(b) || (a.path < b.path ? -1 : 1));
  const found = names.flatMap((kind) =>
    kind === "run" ? baselines(scope, open, near) : near.flatMap((each) => definedIn(each, kind)),
  );
  const named = found.flatMap((each) => nameOffer(scope, each));
  const files = near.map(({ other }) => other.file);
  const seen = text === undefined ? [] : seenIn(files, text.property, text.slot);
  const texts = seen.map(
    (found): Offer => ({
      label: found.text,
      insert: found.text,
      kind: "value",
      detail: `as in ${found.block}`,
    }),
  );
  const offers = open.isQuoted ? texts.map(unquoted) : [...named, ...texts];
  return offers.map((offer) => ({ ...offer, ...open.place }));
}

/** A record of the workspace, and its path as seen from the file. */
interface Neighbour {
  readonly other: Scope;
  readonly path: string;
}

/** How many folders lie between, and half a step more to where readings were taken. */
function farness({ other, path }: Neighbour): number {
  return path.split("/").length + (other.file.session === undefined ? 0 : 0.5);
}

interface FoundName extends Neighbour {
  readonly id: string;
  readonly entity: Placed["entity"];
}

function definedIn(neighbour: Neighbour, kind: NamedKind): readonly FoundName[] {
  const { file } = neighbour.other;
  return [...namesIn(file, kind)].flatMap((id): FoundName[] => {
    const placed = defined(file, kind, id);
    return placed === undefined ? [] : [{ ...neighbour, id, entity: placed.entity }];
  });
}

/** Runs of the same port, since a shop has hundreds: those of the same cylinder first, then the latest, as files are dated. */
function baselines(scope: Scope, { placed }: OpenLine, near: readonly Neighbour[]): readonly FoundName[] {
  const own = placed?.block.entity;
  const port = portOf(scope, own);
  if (own?.kind !== "run" || port === undefined) return [];
  const isOther = ({ entity }: FoundName): boolean =>
    entity.kind === "run" && entity.cylinder !== own.cylinder;
  return near
    .flatMap((each) => definedIn(each, "run"))
    .filter(({ other, entity }) => isSamePlace(port, portOf(other, entity)))
    .sort(
      (a, b) =>
        Number(isOther(a)) - Number(isOther(b)) || farness(a) - farness(b) || (a.path < b.path ? 1 : -1),
    );
}

/** The name, and the include that it needs. */
function nameOffer({ file }: Scope, { id, entity, path }: FoundName): readonly Offer[] {
  const edit = includeEdit(file, path);
  if (edit === undefined) return [];
  const title = isNamed(entity) ? entity.title : undefined;
  const documentation = `defined in ${escaped(path)}, which is then included`;
  return [
    { label: id, insert: id, kind: "name", detail: title ?? entity.kind, documentation, edits: [edit] },
  ];
}

function portOf({ file, locate }: Scope, entity: Placed["entity"] | undefined): Placed | undefined {
  if (entity?.kind !== "run") return undefined;
  const port = entity.port ?? file.session?.entity.port;
  return port && locate("port", port.id);
}
