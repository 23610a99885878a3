// What may stand behind a keyword: names that the file sees, units that it writes, choices, dates, airs and stages.
import type { Form } from "../../grammar/directive.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import type { NamedKind } from "../../shared/model/model.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { isNamed, namesIn, type Placed } from "../analysis/source-file.ts";
import { escaped } from "./markdown.ts";
import type { Offer } from "./offer.ts";
import type { OpenLine } from "./open-line.ts";
import { type SlotAt, slotsAfter } from "./slot-at.ts";
import { measureWords, unitText } from "./unit-words.ts";
import { usedUnits } from "./used-units.ts";
import { seenOffers, usualOffers } from "./usual-offers.ts";

/** `now` as `YYYY-MM-DDTHH:MM` with the zone's offset. */
export function slotOffers(analysis: Analysis, form: Form, open: OpenLine, now: string): readonly Offer[] {
  const { slots, words } = slotsAfter(form, open.before);
  const values = slots.flatMap((slot) => valueOffers(analysis, form, slot, open, now));
  const named = words.map(
    (word): Offer => ({ label: word, insert: `${word} `, kind: "keyword", detail: form.keyword }),
  );
  return [...values, ...named];
}

function valueOffers(
  analysis: Analysis,
  form: Form,
  { name, slot, lacksUnit }: SlotAt,
  open: OpenLine,
  now: string,
): readonly Offer[] {
  const { type } = slot;
  switch (type.kind) {
    case "reference":
      return nameOffers(analysis.scope, type.to, open);
    case "quantity": {
      if (lacksUnit) return unitOffers(analysis, [type.dimension]);
      const none: readonly Offer[] =
        type.or === undefined
          ? []
          : [{ label: type.or, insert: type.or, kind: "choice", detail: "there is none" }];
      return [...none, ...usualOffers(analysis, form, name, slot, open)];
    }
    case "channel":
      return lacksUnit ? unitOffers(analysis, [type.dimension]) : [];
    case "choice":
      return type.of.map((label) => ({ label, insert: label, kind: "choice", detail: "" }));
    case "date":
      return dateOffers(form, now);
    case "air":
      return referenceAirs.map(({ name, source }) => ({
        label: name,
        insert: name,
        kind: "choice",
        detail: source,
      }));
    case "text":
    case "label":
      return seenOffers(analysis.scope, form, name, open.line);
    default:
      return [];
  }
}

/** A session is read at a time, a certificate ends with a day. */
function dateOffers(form: Form, now: string): readonly Offer[] {
  const offer = (text: string, detail: string): Offer => ({
    label: text,
    insert: text,
    kind: "value",
    detail,
  });
  const today = offer(now.slice(0, "YYYY-MM-DD".length), "today");
  return form.keyword === "due" ? [today] : [today, offer(now, "now")];
}

/** Names of a kind that the file sees, but for the block's own: by their uses in the file, then by nearness. */
function nameOffers(scope: Scope, kind: NamedKind, { line, placed: own }: OpenLine): readonly Offer[] {
  const { file, files } = scope;
  const uses = new Map<string, { count: number; nearest: number }>();
  for (const { block, start } of file.outline.blocks) {
    for (const use of block.uses) {
      const distance = Math.abs(start + use.span.line - line);
      if (use.kind !== kind || distance === 0) continue;
      const known = uses.get(use.id) ?? { count: 0, nearest: Number.POSITIVE_INFINITY };
      uses.set(use.id, { count: known.count + 1, nearest: Math.min(known.nearest, distance) });
    }
  }
  const known = new Map<string, Placed>();
  for (const other of files) {
    for (const id of namesIn(other, kind)) {
      const placed = scope.locate(kind, id);
      if (placed !== undefined) known.set(id, placed);
    }
  }
  return [...known]
    .filter(([, { path, start }]) => path !== file.path || start !== own?.start)
    .map(([id, placed]) => {
      const use = uses.get(id);
      const distance = placed.path === file.path ? Math.abs(placed.start - line) : Number.POSITIVE_INFINITY;
      return { id, placed, count: use?.count ?? 0, distance: Math.min(distance, use?.nearest ?? distance) };
    })
    .sort((a, b) => b.count - a.count || compare(a.distance, b.distance))
    .map(({ id, placed }) => nameOffer(id, kind, placed, file.path));
}

/** A plain difference would be no number for two that are infinitely far. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

function nameOffer(id: string, kind: NamedKind, { entity, path }: Placed, own: string): Offer {
  const title = isNamed(entity) ? entity.title : undefined;
  return {
    label: id,
    insert: id,
    kind: "name",
    detail: title ?? kind,
    ...(path !== own && { documentation: `in ${escaped(relativePath(folderOf(own), path))}` }),
  };
}

/** Units of the dimensions; those that the file writes most first. */
export function unitOffers({ scope }: Analysis, dimensions: readonly Dimension[]): readonly Offer[] {
  return usedUnits(scope.file.text)(dimensions).map(({ unit }) => ({
    label: unit.symbol,
    insert: unit.symbol,
    kind: "unit",
    detail: measureWords(unit),
    documentation: unitText(unit),
  }));
}
