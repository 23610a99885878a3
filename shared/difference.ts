// Where two lists differ, the later of which was made from the other by a change in one place.

/** Both lists begin with `before` of the same items and end with `after` of the same. */
export interface Difference {
  readonly before: number;
  readonly after: number;
}

export function difference<T>(now: readonly T[], then: readonly T[]): Difference {
  const most = Math.min(now.length, then.length);
  let before = 0;
  while (before < most && now[before] === then[before]) before++;
  let after = 0;
  while (after < most - before && now[now.length - 1 - after] === then[then.length - 1 - after]) after++;
  return { before, after };
}

/** A list, and what was made of each of its items. */
export interface Made<A, B> {
  readonly of: readonly A[];
  readonly to: readonly B[];
}

/** What `make` makes of each item of a list; items that the earlier list has too keep what was made of them. */
export function remade<A, B>(
  list: readonly A[],
  earlier: Made<A, B> | undefined,
  make: (item: A) => B,
): readonly B[] {
  if (earlier === undefined) return list.map(make);
  const { before, after } = difference(list, earlier.of);
  if (before === list.length && before === earlier.of.length) return earlier.to;
  const changed = list.slice(before, list.length - after).map(make);
  return replaced(earlier.to, before, earlier.to.length - after, changed);
}

/** Arguments stand on the stack, which has room for some 100 000. */
const MOST_ARGUMENTS = 10_000;

/**
 * A list in which `items` stand in the place of those from one index up to another. Cut and joined, a list of thousands
 * would be copied twice, and its items one by one.
 */
export function replaced<T>(list: readonly T[], from: number, to: number, items: readonly T[]): readonly T[] {
  return items.length > MOST_ARGUMENTS
    ? list.slice(0, from).concat(items, list.slice(to))
    : list.toSpliced(from, to - from, ...items);
}
