// Reads the words behind a keyword into the slots that its directive declares.

import { findReferenceAir, referenceAirs } from "../shared/calc/reference-air.ts";
import { type Finding, type FindingArgs, type FindingKind, type Fix, raise } from "../shared/finding.ts";
import type { AirName, Reference } from "../shared/model/model.ts";
import type { Dimension } from "../shared/quantity/dimension.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { readNumber } from "../shared/quantity/number.ts";
import type { Quantity } from "../shared/quantity/quantity.ts";
import { quotedText } from "../shared/text/quoted-text.ts";
import type { Span } from "../shared/text/span.ts";
import type { Form, Property } from "./directive.ts";
import { badDate } from "./findings/bad-date.ts";
import { badName } from "./findings/bad-name.ts";
import { extraValue } from "./findings/extra-value.ts";
import { missingValue } from "./findings/missing-value.ts";
import { numberForm } from "./findings/number-form.ts";
import { unknownChoice } from "./findings/unknown-choice.ts";
import { numberFinding } from "./number-finding.ts";
import { isDate } from "./read-date.ts";
import { noNumber, noUnit, readQuantity, readUnit } from "./read-quantity.ts";
import { signature, slotWords } from "./signature.ts";
import type { ChannelValue, Slot, SlotEntry, SlotLayout, SlotType } from "./slots.ts";
import { type Atom, type DirectiveLine, quoted } from "./tree.ts";

/** A slot's words in the line. */
export interface Place {
  readonly from: number;
  readonly to: number;
}

/** The values of a line's slots. Spans of findings and references have the line number 0. */
export interface Bound {
  readonly values: Readonly<Record<string, unknown>>;
  readonly places: Readonly<Record<string, Place>>;
  /** Whether every slot that the directive needs was read, and no stated one was unreadable. */
  readonly complete: boolean;
  readonly findings: readonly Finding[];
}

const AIR_NAMES = referenceAirs.map(({ name }) => name);

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

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

/** How far the reading of a line has come. */
interface Reading {
  readonly form: Form;
  readonly layout: SlotLayout;
  readonly line: DirectiveLine;
  readonly values: Record<string, unknown>;
  readonly places: Record<string, Place>;
  readonly findings: Finding[];
  /** Slots whose words stand in the line, readable or not. */
  readonly met: string[];
  /** What the line should say and does not, in words. */
  readonly missing: string[];
  complete: boolean;
  next: number;
}

function begin(form: Form, line: DirectiveLine): Reading {
  return {
    form,
    layout: form.layout,
    line,
    values: {},
    places: {},
    findings: [],
    met: [],
    missing: [],
    complete: true,
    next: 0,
  };
}

function readInOrder(reading: Reading): void {
  for (const entry of reading.layout.positional) {
    const atom = reading.line.atoms[reading.next];
    if (atom === undefined) return;
    if (isSlotWord(reading, atom)) {
      // A slot's word in the place of a value that may be left out, or that is missing.
      if (entry[1].optional) continue;
      return;
    }
    if (entry[1].optional && entry[1].type.kind === "text" && atom.kind !== "text") continue;
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
      ([, { type }]) => type.kind === "quantity" && quantity?.unit.dimensions.includes(type.dimension),
    );
    if (entry === undefined || quantity === undefined) reading.complete = false;
    else store(reading, entry[0], quantity, { from: atom.from, to: previousEnd(reading) });
  }
}

function freeSlots({ layout, met }: Reading): readonly SlotEntry[] {
  return layout.positional.filter(([name]) => !met.includes(name));
}

function freeDimensions(reading: Reading): readonly Dimension[] {
  return freeSlots(reading).flatMap(([, { type }]) => (type.kind === "quantity" ? [type.dimension] : []));
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
  if (entry === undefined || reading.met.includes(entry[0])) return false;
  reading.next++;
  if (reading.line.atoms[reading.next] === undefined) {
    reading.missing.push(needed(entry[1]));
    reading.met.push(entry[0]);
  } else readSlot(reading, entry);
  return true;
}

function readSlot(reading: Reading, [name, slot]: SlotEntry): void {
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

/** Takes the words of one value, reports what is wrong with them, and gives `undefined` where they have no value. */
function takeValue(reading: Reading, type: SlotType, atom: Atom): unknown {
  switch (type.kind) {
    case "quantity":
      if (type.or !== undefined && atom.kind === "word" && atom.text === type.or)
        return take(reading, type.or);
      return takeQuantity(reading, [type.dimension], type.or === undefined ? [] : [type.or]);
    case "number":
      return takeNumber(reading, type.whole, atom);
    case "name":
    case "reference":
      return takeId(reading, atom);
    case "label":
      return atom.kind === "word"
        ? take(reading, atom.text)
        : fail(reading, badName, atom, { written: atom.text });
    case "text":
      return atom.kind === "text" ? take(reading, atom.text) : failText(reading, atom);
    case "date":
      return atom.kind === "word" && isDate(atom.text)
        ? take(reading, atom.text)
        : fail(reading, badDate, atom, { written: atom.text });
    case "choice":
      return atom.kind === "word" && type.of.includes(atom.text)
        ? take(reading, atom.text)
        : failChoice(reading, atom, type.of);
    case "air":
      return takeAir(reading, atom);
    case "channel":
      return takeChannel(reading, type.dimension, atom);
  }
}

function take<T>(reading: Reading, value: T): T {
  reading.next++;
  return value;
}

function takeQuantity(
  reading: Reading,
  dimensions: readonly Dimension[],
  others: readonly string[] = [],
): Quantity | undefined {
  const words = reading.line.atoms.slice(reading.next, reading.next + 2);
  const { value, taken } = readQuantity(
    words,
    dimensions,
    (word) => reading.layout.named.has(word),
    (finding) => reading.findings.push(finding),
    others,
  );
  reading.next += taken;
  return value;
}

function takeNumber(reading: Reading, whole: boolean, atom: Atom): number | undefined {
  if (atom.kind === "text") return failNumber(reading, atom, "not-a-number");
  const read = readNumber(atom.text);
  if ("problem" in read) {
    reading.next++;
    const finding =
      read.problem === "not-a-number"
        ? raise(numberForm, spanOf(atom), { written: atom.text, problem: read.problem, mended: "" })
        : numberFinding(atom.text, read, spanOf(atom));
    reading.findings.push(finding);
    return undefined;
  }
  if (whole && (!Number.isInteger(read.value) || read.value < 1)) {
    return failNumber(reading, atom, "not-whole");
  }
  return take(reading, read.value);
}

function takeId(reading: Reading, atom: Atom): Reference | undefined {
  if (atom.kind === "text" || !ID.test(atom.text)) {
    return fail(reading, badName, atom, { written: atom.text });
  }
  return take(reading, { id: atom.text, span: spanOf(atom) });
}

function takeAir(reading: Reading, atom: Atom): AirName | undefined {
  if (atom.kind === "text") return fail(reading, badName, atom, { written: `"${atom.text}"` });
  if (findReferenceAir(atom.text) !== undefined) return take(reading, { name: atom.text });
  if (!/^[-+.]?\p{Nd}/u.test(atom.text)) return failChoice(reading, atom, AIR_NAMES);
  const stated: { temperature?: Quantity; pressure?: Quantity; humidity?: Quantity } = {};
  const free = new Set<"temperature" | "pressure" | "humidity">(["temperature", "pressure", "humidity"]);
  let readable = true;
  let next = reading.line.atoms[reading.next];
  while (next !== undefined && free.size > 0 && !isSlotWord(reading, next)) {
    const quantity = takeQuantity(reading, [...free]);
    const dimension = [...free].find((candidate) => quantity?.unit.dimensions.includes(candidate));
    if (quantity === undefined || dimension === undefined) readable = false;
    else {
      stated[dimension] = quantity;
      free.delete(dimension);
    }
    next = reading.line.atoms[reading.next];
  }
  if (!readable) return undefined;
  if (!free.has("temperature") && !free.has("pressure")) return stated;
  if (free.has("temperature")) reading.missing.push("a temperature");
  if (free.has("pressure")) reading.missing.push("a pressure");
  return undefined;
}

function takeChannel(reading: Reading, dimension: Dimension, atom: Atom): ChannelValue | undefined {
  if (atom.kind !== "text") return failChoice(reading, atom, ["a column name in quotes"]);
  reading.next++;
  const unitAtom = reading.line.atoms[reading.next];
  if (unitAtom === undefined || unitAtom.kind === "text" || isSlotWord(reading, unitAtom)) {
    reading.findings.push(noUnit(atom.text, spanOf(atom), [dimension]));
    return undefined;
  }
  reading.next++;
  const unit = readUnit(unitAtom, [dimension], (finding) => reading.findings.push(finding));
  return unit === undefined ? undefined : { column: atom.text, unit };
}

function fail<A extends FindingArgs>(reading: Reading, kind: FindingKind<A>, atom: Atom, args: A): undefined {
  reading.findings.push(raise(kind, spanOf(atom), args));
  reading.next++;
  return undefined;
}

function failNumber(reading: Reading, atom: Atom, problem: string): undefined {
  const written = atom.kind === "text" ? `"${atom.text}"` : atom.text;
  return fail(reading, numberForm, atom, { written, problem, mended: "" });
}

function failChoice(reading: Reading, atom: Atom, of: readonly string[]): undefined {
  const [near] = nearest(atom.text, of);
  const fix =
    near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span: spanOf(atom), text: near }] };
  const args = { written: atom.text, choices: of.join(", "), nearest: near ?? "" };
  reading.findings.push(raise(unknownChoice, spanOf(atom), args, { fix }));
  reading.next++;
  return undefined;
}

/** Words where a text belongs: what is missing are its quotes, so all words up to the next text are taken as one. */
function failText(reading: Reading, first: Atom): undefined {
  let atom: Atom | undefined = first;
  while (atom?.kind === "word" && !isSlotWord(reading, atom)) atom = reading.line.atoms[++reading.next];
  const span = { line: 0, from: first.from, to: previousEnd(reading) };
  const written = quoted(reading.line, span.from, span.to);
  const inQuotes = quotedText(written);
  const fix = { title: "Put it in quotes", edits: [{ span, text: inQuotes }] };
  const args = { written, choices: "a text in quotes", nearest: inQuotes };
  reading.findings.push(raise(unknownChoice, span, args, { fix }));
  return undefined;
}

/**
 * Reports what is left over or missing. Where both are, one slip is the usual cause: a misspelt word of a slot, or one
 * that was left out, so that only the one that mends the other is named.
 */
function reportRest(reading: Reading): void {
  for (const [name, slot] of reading.layout.all) {
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
  return [...layout.named].flatMap(([word, [name]]) => (met.includes(name) ? [] : [word]));
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

function isSlotWord(reading: Reading, atom: Atom): boolean {
  return atom.kind === "word" && reading.layout.named.has(atom.text);
}

function previousEnd(reading: Reading): number {
  return reading.line.atoms[reading.next - 1]?.to ?? reading.line.keyword.to;
}

function lastEnd(line: DirectiveLine): number {
  return line.atoms.at(-1)?.to ?? line.keyword.to;
}

function spanOf(atom: Atom): Span {
  return { line: 0, from: atom.from, to: atom.to };
}
