// Reads the words behind a keyword into the slots that its directive declares.
import { type Finding, type Fix, raise } from "../shared/finding.ts";
import type { Dimension } from "../shared/quantity/dimension.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import type { Form, Property } from "./directive.ts";
import { extraValue } from "./findings/extra-value.ts";
import { missingValue } from "./findings/missing-value.ts";
import { noNumber } from "./read-quantity.ts";
import { isSlotWord, type Place, previousEnd, type Reading, spanOf } from "./reading.ts";
import { signature, slotWords } from "./signature.ts";
import type { Slot, SlotEntry } from "./slots.ts";
import { takeQuantity, takeValue } from "./take-value.ts";
import { type Atom, type DirectiveLine, quoted } from "./tree.ts";

/** The values of a line's slots. Spans of findings and references have the line number 0. */
export interface Bound {
  readonly values: Readonly<Record<string, unknown>>;
  readonly places: Readonly<Record<string, Place>>;
  /** Whether every slot that the directive needs was read, and no stated one was unreadable. */
  readonly complete: boolean;
  readonly findings: readonly Finding[];
}

/** Reads the words of a line into the slots of a form: positional ones first, then named ones. Never throws. */
export function bind(form: Form, line: DirectiveLine): Bound {
  const reading = begin(form, line);
  if (form.anyOrder) readByDimension(reading);
  else readInOrder(reading);
  readNamed(reading);
  reportRest(reading);
  if (reading.complete && form.form === "property") reportMisfits(reading, form);
  const { values, places, findings, complete } = reading;
  return { values, places, findings, complete };
}

function begin(form: Form, line: DirectiveLine): Reading {
  // Made one by one: a literal with others in it is copied slowly as long as the code is not compiled.
  const values: Reading["values"] = {};
  const places: Reading["places"] = {};
  const findings: Reading["findings"] = [];
  const met: Reading["met"] = [];
  const missing: Reading["missing"] = [];
  const { layout } = form;
  return { form, layout, line, values, places, findings, met, missing, complete: true, next: 0 };
}

function readInOrder(reading: Reading): void {
  for (const entry of reading.layout.positional) {
    const atom = reading.line.atoms[reading.next];
    if (atom === undefined) return;
    if (isSlotWord(reading, atom)) {
      // A slot's word in the place of a value that may be left out, or that is missing.
      if (entry.slot.optional) continue;
      return;
    }
    if (entry.slot.optional && entry.slot.type.kind === "text" && atom.kind !== "text") continue;
    readSlot(reading, entry);
  }
}

/** Quantities in any order, told apart by their dimensions. */
function readByDimension(reading: Reading): void {
  for (
    let atom = reading.line.atoms[reading.next];
    atom !== undefined;
    atom = reading.line.atoms[reading.next]
  ) {
    if (isSlotWord(reading, atom)) {
      if (!readNamedOne(reading, atom)) return;
      continue;
    }
    if (readMisspelt(reading, atom)) continue;
    const free = freeSlots(reading);
    const dimensions = freeDimensions(reading);
    if (dimensions.length === 0) return;
    const quantity = takeQuantity(reading, dimensions, freeWords(reading));
    const entry = free.find(
      ({ slot: { type } }) => type.kind === "quantity" && quantity?.unit.dimensions.includes(type.dimension),
    );
    if (entry === undefined || quantity === undefined) reading.complete = false;
    else store(reading, entry.name, quantity, { from: atom.from, to: previousEnd(reading) });
  }
}

function freeSlots({ layout, met }: Reading): readonly SlotEntry[] {
  return layout.positional.filter(({ name }) => !met.includes(name));
}

function freeDimensions(reading: Reading): readonly Dimension[] {
  return freeSlots(reading).flatMap(({ slot: { type } }) =>
    type.kind === "quantity" ? [type.dimension] : [],
  );
}

/** A word near that of a slot: with it the value behind it is read, which would else be a second finding. */
function readMisspelt(reading: Reading, atom: Atom): boolean {
  if (atom.kind === "text" || /\p{Nd}/u.test(atom.text)) return false;
  const [meant] = nearest(atom.text, freeWords(reading));
  const entry = reading.layout.named.get(meant ?? "");
  if (meant === undefined || entry === undefined) return false;
  reading.findings.push(noNumber(atom.text, spanOf(atom), freeDimensions(reading), freeWords(reading)));
  reading.next++;
  readSlot(reading, entry);
  reading.complete = false;
  return true;
}

function readNamed(reading: Reading): void {
  for (
    let atom = reading.line.atoms[reading.next];
    atom !== undefined;
    atom = reading.line.atoms[reading.next]
  ) {
    if (!isSlotWord(reading, atom) || !readNamedOne(reading, atom)) return;
  }
}

function readNamedOne(reading: Reading, atom: Atom): boolean {
  const entry = reading.layout.named.get(atom.text);
  if (entry === undefined || reading.met.includes(entry.name)) return false;
  reading.next++;
  if (reading.line.atoms[reading.next] === undefined) {
    reading.missing.push(needed(entry.slot));
    reading.met.push(entry.name);
  } else readSlot(reading, entry);
  return true;
}

function readSlot(reading: Reading, { name, slot }: SlotEntry): void {
  const atom = reading.line.atoms[reading.next];
  if (atom === undefined) return;
  const value = takeValue(reading, slot.type, atom);
  if (value === undefined) {
    reading.complete = false;
    reading.met.push(name);
  } else store(reading, name, value, { from: atom.from, to: previousEnd(reading) });
}

function store(reading: Reading, name: string, value: unknown, place: Place): void {
  reading.met.push(name);
  reading.values[name] = value;
  reading.places[name] = place;
}

/**
 * Reports what is left over or missing. Where both are, one slip is the usual cause: a misspelt word of a slot, or one
 * that was left out, so that only the one that mends the other is named.
 */
function reportRest(reading: Reading): void {
  for (const { name, slot } of reading.layout.all) {
    if (!slot.optional && !reading.met.includes(name)) reading.missing.push(needed(slot));
  }
  if (reading.missing.length > 0) reading.complete = false;
  const first = reading.line.atoms[reading.next];
  if (first === undefined && reading.missing.length === 0) return;
  const meant = first?.kind === "word" ? nearest(first.text, freeWords(reading))[0] : undefined;
  if (first !== undefined && (meant !== undefined || reading.missing.length === 0)) {
    const to = lastEnd(reading.line);
    const fix =
      meant === undefined
        ? undefined
        : { title: `Write ${meant}`, edits: [{ span: spanOf(first), text: meant }] };
    reading.findings.push(extra(reading, first.from, to, fix));
  } else if (reading.missing.length > 0) reading.findings.push(missing(reading, reading.missing));
}

/** Words of slots that have not been met. */
function freeWords({ layout, met }: Reading): readonly string[] {
  return [...layout.named].flatMap(([word, { name }]) => (met.includes(name) ? [] : [word]));
}

function reportMisfits(reading: Reading, form: Property): void {
  const misfits = form.misfits(reading.values);
  const lacks = misfits.flatMap((misfit) => ("missing" in misfit ? [misfit.missing] : []));
  if (lacks.length > 0) {
    reading.complete = false;
    reading.findings.push(missing(reading, lacks));
  }
  for (const misfit of misfits) {
    const place = "extra" in misfit ? reading.places[misfit.extra] : undefined;
    if (place === undefined || !("extra" in misfit)) continue;
    const { atoms } = reading.line;
    const word = reading.form.slots[misfit.extra]?.word;
    const before = atoms[atoms.findIndex(({ from }) => from === place.from) - 1];
    const from = word === undefined ? place.from : (before?.from ?? place.from);
    reading.findings.push(extra(reading, from, place.to, undefined));
    delete reading.values[misfit.extra];
  }
}

function extra(reading: Reading, from: number, to: number, fix: Fix | undefined): Finding {
  const written = quoted(reading.line, from, to);
  const args = { keyword: reading.form.keyword, written, form: signature(reading.form) };
  return raise(extraValue, { line: 0, from, to }, args, { fix });
}

function missing(reading: Reading, words: readonly string[]): Finding {
  const span = { line: 0, from: reading.line.keyword.from, to: lastEnd(reading.line) };
  const { keyword } = reading.form;
  return raise(missingValue, span, { keyword, missing: words.join(", "), form: signature(reading.form) });
}

function needed({ type, word }: Slot): string {
  return word === undefined ? slotWords(type) : `${slotWords(type)} behind '${word}'`;
}

function lastEnd(line: DirectiveLine): number {
  return line.atoms.at(-1)?.to ?? line.keyword.to;
}
