// Drops what was left out, so that an entity has a property only where the record states it.

/** The same record without its undefined values. */
export function present<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const stated: { [K in keyof T]?: Exclude<T[K], undefined> } = {};
  for (const key in values) {
    const value = values[key];
    if (value !== undefined) stated[key] = value as Exclude<T[typeof key], undefined>;
  }
  return stated;
}
