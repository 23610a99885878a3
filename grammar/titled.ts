// What every heading with an id and a title gives to the entity that it opens.
import type { Origin, Reference } from "../shared/model/model.ts";

/** Id, title and origin of an entity; the id is empty where none could be read, and nothing can refer to it then. */
export function titled(
  values: { readonly id: Reference | undefined; readonly title: string | undefined },
  origin: Origin,
): { id: string; title?: string; origin: Origin } {
  const id = values.id?.id ?? "";
  return values.title === undefined ? { id, origin } : { id, title: values.title, origin };
}
