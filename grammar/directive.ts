// The shape of a directive: all that Headnote knows about a keyword stands in one record of one of these two forms.
import type { BlockKind, Draft, Entities, Origin } from "../shared/model/model.ts";
import type { Span } from "../shared/text/span.ts";
import { layoutOf, type SlotLayout, type Slots, type Values } from "./slots.ts";

interface FormBase {
  readonly keyword: string;
  readonly slots: Slots;
  readonly layout: SlotLayout;
  /** True where the positional quantities may stand in any order, told apart by their dimensions. */
  readonly anyOrder: boolean;
  /** One or two sentences for hover and reference. */
  readonly doc: string;
  /** One line as a user would write it. */
  readonly example: string;
}

/** A line that opens a block. */
export interface Heading extends FormBase {
  readonly form: "heading";
  readonly block: BlockKind;
  /** Property keywords that the block cannot do without. */
  readonly required: readonly string[];
  /** Columns that the block's table cannot do without; `undefined` where the block has no table. */
  readonly columns: readonly string[] | undefined;
  /** Makes the empty entity. Values that could not be read are `undefined`, since a heading always opens its block. */
  readonly open: (values: Readonly<Record<string, unknown>>, origin: Origin) => Draft<Entities[BlockKind]>;
}

/** What is wrong with values that can all be read: something that they need, or one that does not go with the others. */
export type Misfit = { readonly missing: string } | { readonly extra: string };

/** A line that says something of the block above it. */
export interface Property extends FormBase {
  readonly form: "property";
  readonly within: readonly BlockKind[];
  readonly repeatable: boolean;
  /** How the values fail to go together: `missing` says in words what is needed, `extra` names a slot. */
  readonly misfits: (values: Readonly<Record<string, unknown>>) => readonly Misfit[];
  /** Puts the values into the entity; called only when every required slot was read. */
  readonly lower: (
    values: Readonly<Record<string, unknown>>,
    into: Draft<Entities[BlockKind]>,
    span: Span,
  ) => void;
}

export type Form = Heading | Property;

type Partly<S extends Slots> = { readonly [K in keyof S]: Values<S>[K] | undefined };

const NO_MISFITS: Property["misfits"] = () => [];

/** Declares a heading; its `open` sees the slots' types. */
export function heading<B extends BlockKind, S extends Slots>(form: {
  readonly keyword: B;
  readonly slots: S;
  readonly required?: readonly string[];
  readonly columns?: readonly string[];
  readonly doc: string;
  readonly example: string;
  readonly open: (values: Partly<S>, origin: Origin) => Draft<Entities[B]>;
}): Heading {
  const { open, required = [], columns, ...rest } = form;
  return {
    ...rest,
    form: "heading",
    layout: layoutOf(form.slots),
    block: form.keyword,
    anyOrder: false,
    required,
    columns,
    // The reader fills the record from these very slots, so their types hold.
    open: open as Heading["open"],
  };
}

/** Declares a property; its `lower` sees the slots' types and the entities of the blocks that may hold it. */
export function property<B extends BlockKind, S extends Slots>(form: {
  readonly keyword: string;
  readonly within: readonly B[];
  readonly repeatable?: boolean;
  readonly anyOrder?: boolean;
  readonly slots: S;
  readonly doc: string;
  readonly example: string;
  readonly misfits?: (values: Values<S>) => readonly Misfit[];
  readonly lower: (values: Values<S>, into: Draft<Entities[B]>, span: Span) => void;
}): Property {
  const { lower, misfits, repeatable = false, anyOrder = false, ...rest } = form;
  return {
    ...rest,
    form: "property",
    layout: layoutOf(form.slots),
    repeatable,
    anyOrder,
    misfits: misfits === undefined ? NO_MISFITS : (misfits as Property["misfits"]),
    // The outline calls it for blocks of `within` only, and the reader fills the values from these very slots.
    lower: lower as Property["lower"],
  };
}
