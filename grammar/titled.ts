// What every heading with an id and a title gives to the entity that it opens.
import type { NamedKind, Origin, Reference } from "../shared/model/model.ts";

/** Kind, id, title and origin of an entity; the id is empty where none could be read, and nothing can refer to it then. */
export function titled<K extends NamedKind>(
  kind: K,
  values: { readonly id: Reference | undefined; readonly title: string | undefined },
  origin: Origin,
): { kind: K; id: string; title?: string; origin: Origin } {
  const id = values.id?.id ?? "";
  return values.title === undefined ? { kind, id, origin } : { kind, id, title: values.title, origin };
}
