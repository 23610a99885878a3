// The kinds of value that can stand behind a keyword; each directive declares its slots once, and everything follows.
import type { AirName, NamedKind, Reference } from "../shared/model/model.ts";
import type { Dimension } from "../shared/quantity/dimension.ts";
import type { Quantity } from "../shared/quantity/quantity.ts";
import type { Unit } from "../shared/quantity/unit.ts";

/** What a slot takes, as data that the reader, completion, the reference and the test generators share. */
export type SlotType =
  | { readonly kind: "name"; readonly defines: NamedKind }
  | { readonly kind: "label" }
  | { readonly kind: "reference"; readonly to: NamedKind }
  | { readonly kind: "quantity"; readonly dimension: Dimension; readonly or?: string }
  | { readonly kind: "number"; readonly whole: boolean }
  | { readonly kind: "text" }
  | { readonly kind: "date" }
  | { readonly kind: "choice"; readonly of: readonly string[] }
  | { readonly kind: "air" }
  | { readonly kind: "channel"; readonly dimension: Dimension };

/** A slot whose value is `T`; one with a `word` is named, the others are read in their order. */
export interface Slot<T = unknown, Optional extends boolean = boolean> {
  readonly type: SlotType;
  readonly optional: Optional;
  readonly word?: string;
  /** Never set: carries the type of the slot's value. */
  readonly value?: T;
}

export type Slots = Readonly<Record<string, Slot>>;

/** What a directive's `lower` is given: every slot's value, `undefined` for optional ones that were left out. */
export type Values<S extends Slots> = {
  readonly [K in keyof S]: S[K] extends Slot<infer T, infer Optional>
    ? Optional extends true
      ? T | undefined
      : T
    : never;
};

/** The column of a log file that holds a quantity, and its unit. */
export interface ChannelValue {
  readonly column: string;
  readonly unit?: Unit;
}

const required = <T>(type: SlotType): Slot<T, false> => ({ type, optional: false });

/** The id that a heading gives to what it opens. */
export const name = (defines: NamedKind): Slot<Reference, false> => required({ kind: "name", defines });

/** A word of the user's own that is known in its block only, such as a range or a section. */
export const label = (): Slot<string, false> => required({ kind: "label" });

/** The id of something that stands elsewhere. */
export const reference = (to: NamedKind): Slot<Reference, false> => required({ kind: "reference", to });

export const quantity = (dimension: Dimension): Slot<Quantity, false> =>
  required({ kind: "quantity", dimension });

/** A quantity, or one word that says there is none. */
export const quantityOr = <W extends string>(dimension: Dimension, or: W): Slot<Quantity | W, false> =>
  required({ kind: "quantity", dimension, or });

export const number = (): Slot<number, false> => required({ kind: "number", whole: false });
export const wholeNumber = (): Slot<number, false> => required({ kind: "number", whole: true });
export const text = (): Slot<string, false> => required({ kind: "text" });
export const date = (): Slot<string, false> => required({ kind: "date" });

export const choice = <const C extends readonly string[]>(of: C): Slot<C[number], false> =>
  required({ kind: "choice", of });

/** A named reference air, or temperature, pressure and, if it matters, humidity. */
export const air = (): Slot<AirName, false> => required({ kind: "air" });

/** A column of a log file and its unit. */
export const channel = (dimension: Dimension): Slot<ChannelValue, false> =>
  required({ kind: "channel", dimension });

/** A slot that may be left out. */
export function optional<T>(slot: Slot<T, false>): Slot<T, true> {
  return { ...slot, optional: true };
}

/** A slot that stands behind a word of its own, after the positional ones. */
export function after<T, Optional extends boolean>(word: string, slot: Slot<T, Optional>): Slot<T, Optional> {
  return { ...slot, word };
}

/** A slot and its name. */
export interface SlotEntry {
  readonly name: string;
  readonly slot: Slot;
}

/** The slots of a directive as its lines are read: worked out once, since a record has many lines of one keyword. */
export interface SlotLayout {
  readonly all: readonly SlotEntry[];
  readonly positional: readonly SlotEntry[];
  /** By the word that they stand behind. */
  readonly named: ReadonlyMap<string, SlotEntry>;
  /** The names of things that stand elsewhere, and of what kind these are. */
  readonly references: readonly { readonly name: string; readonly to: NamedKind }[];
}

export function layoutOf(slots: Slots): SlotLayout {
  const all = Object.entries(slots).map(([name, slot]): SlotEntry => ({ name, slot }));
  const named = all.flatMap((entry): [string, SlotEntry][] =>
    entry.slot.word === undefined ? [] : [[entry.slot.word, entry]],
  );
  return {
    all,
    positional: all.filter(({ slot }) => slot.word === undefined),
    named: new Map(named),
    references: all.flatMap(({ name, slot: { type } }) =>
      type.kind === "reference" ? [{ name, to: type.to }] : [],
    ),
  };
}
