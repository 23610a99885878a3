// Reads the words of one value, as the type of its slot has them.
import { findReferenceAir, referenceAirs } from "../shared/calc/reference-air.ts";
import { type FindingArgs, type FindingKind, raise } from "../shared/finding.ts";
import type { AirName, Reference } from "../shared/model/model.ts";
import type { Dimension } from "../shared/quantity/dimension.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { readNumber } from "../shared/quantity/number.ts";
import type { Quantity } from "../shared/quantity/quantity.ts";
import { quotedText } from "../shared/text/quoted-text.ts";
import { badDate } from "./findings/bad-date.ts";
import { badName } from "./findings/bad-name.ts";
import { numberForm } from "./findings/number-form.ts";
import { unknownChoice } from "./findings/unknown-choice.ts";
import { numberFinding } from "./number-finding.ts";
import { isDate } from "./read-date.ts";
import { noUnit, readQuantity, readUnit } from "./read-quantity.ts";
import { isSlotWord, previousEnd, type Reading, spanOf } from "./reading.ts";
import type { ChannelValue, SlotType } from "./slots.ts";
import { type Atom, quoted } from "./tree.ts";

const AIR_NAMES = referenceAirs.map(({ name }) => name);

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

/** Takes the words of one value, reports what is wrong with them, and gives `undefined` where they have no value. */
export function takeValue(reading: Reading, type: SlotType, atom: Atom): unknown {
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

/** A quantity of one of the dimensions; `others` are the words that may stand in its place, for the message. */
export function takeQuantity(
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
