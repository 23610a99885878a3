// Gathers readings into classes of lift or of flow, so that a table of them has few lines.

/** Values from `from` to below `to`; a class of one value has both the same. */
export interface ValueClass<T> {
  readonly from: number;
  readonly to: number;
  readonly members: readonly T[];
}

/** More distinct values than this are put into classes of one width. */
const MOST_DISTINCT = 12;
/** About so many classes of one width. */
const STATION_CLASSES = 14;
const BANDS = 8;
/** Distinct values closer than this, relative to the largest, are one. */
const ALIKE = 1e-6;

/**
 * The members by rising value, which `numberOf` gives in the unit that the reader sees: where they are few, every distinct
 * value a class of its own, else classes of one width around its multiples, so that stations stand in the middle.
 * Members without a finite value are left out.
 */
export function stationClasses<T>(members: readonly T[], numberOf: NumberOf<T>): readonly ValueClass<T>[] {
  const known = knownOf(members, numberOf);
  const size = known.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
  const single = grouped(known, (value) => Math.round(value / (size * ALIKE || 1)));
  if (single.length > MOST_DISTINCT) return bands(known, STATION_CLASSES, 0.5);
  return single.map(({ least, inside }) => ({ from: least, to: least, members: inside }));
}

/** The members by rising value in up to eight or so bands of one width, which begin at its multiples. */
export function bandClasses<T>(members: readonly T[], numberOf: NumberOf<T>): readonly ValueClass<T>[] {
  return bands(knownOf(members, numberOf), BANDS, 0);
}

type NumberOf<T> = (member: T) => number | undefined;

function knownOf<T>(members: readonly T[], numberOf: NumberOf<T>): readonly Known<T>[] {
  return members.flatMap((member) => {
    const value = numberOf(member);
    return value === undefined || !Number.isFinite(value) ? [] : [{ member, value }];
  });
}

/** Bands of a width that is 1, 2 or 5 times a power of ten, each beginning `before` widths below a multiple of it. */
function bands<T>(known: readonly Known<T>[], count: number, before: number): readonly ValueClass<T>[] {
  const low = known.reduce((least, { value }) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const high = known.reduce((most, { value }) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const width = niceWidth(Math.max(high - low, Math.abs(high) * ALIKE) / count);
  if (!(width > 0 && Number.isFinite(width)))
    return known.length === 0 ? [] : [{ from: low, to: high, members: known.map(({ member }) => member) }];
  const indexOf = (value: number) => Math.floor(value / width + before + ALIKE);
  return grouped(known, indexOf).map(({ least, inside }) => {
    const from = (indexOf(least) - before) * width;
    // What cannot be below zero has no class that begins there.
    return { from: low >= 0 ? Math.max(0, from) : from, to: from + width, members: inside };
  });
}

interface Known<T> {
  readonly member: T;
  readonly value: number;
}

interface Group<T> {
  readonly least: number;
  readonly inside: readonly T[];
}

/** By rising key. */
function grouped<T>(known: readonly Known<T>[], keyOf: (value: number) => number): readonly Group<T>[] {
  const groups = new Map<number, Known<T>[]>();
  for (const entry of known) {
    const key = keyOf(entry.value);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([, group]) => ({
      least: group.reduce((low, { value }) => Math.min(low, value), Number.POSITIVE_INFINITY),
      inside: group.map(({ member }) => member),
    }));
}

function niceWidth(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5, 10].find((step) => step * power >= least * (1 - ALIKE)) ?? 10) * power;
}
