// Tells which slot of a directive the cursor stands in, on whole and broken lines alike.
import { bind } from "../../grammar/bind.ts";
import type { Form } from "../../grammar/directive.ts";
import { parseLine } from "../../grammar/line-parser.ts";
import type { Slot } from "../../grammar/slots.ts";

export interface SlotAt {
  readonly name: string;
  readonly slot: Slot;
  /** Whether a quantity's number or a log's column stands there already, so that the unit is what is missing. */
  readonly lacksUnit: boolean;
}

export interface SlotChoice {
  /** The slots that may stand at the cursor, the likeliest first. */
  readonly slots: readonly SlotAt[];
  /** Words of named slots that may still follow. */
  readonly words: readonly string[];
}

/** What may stand behind the text of a line that ends where the word under the cursor begins. */
export function slotsAfter(form: Form, before: string): SlotChoice {
  const line = parseLine(before);
  if (line.kind !== "directive") return { slots: [], words: [] };
  const bound = bind(form, line);
  const entries = Object.entries(form.slots);
  const met = (name: string) => name in bound.places;
  const last = line.atoms.at(-1);
  const named = entries.find(
    ([, { word }]) => word !== undefined && word === last?.text && last?.kind === "word",
  );
  if (named !== undefined && !met(named[0])) return { slots: [slotAt(named, false)], words: [] };
  const channel = entries.find(
    ([name, { word, type }]) => type.kind === "channel" && word === line.atoms.at(-2)?.text && !met(name),
  );
  if (last?.kind === "text" && channel !== undefined) return { slots: [slotAt(channel, true)], words: [] };
  const isNumber = last !== undefined && last.kind === "word" && /^[-.]?\p{Nd}/u.test(last.text);
  const open = entries.filter(([name, { word }]) => word === undefined && !met(name));
  if (isNumber) {
    const waiting = waitingForUnit(
      entries,
      line.atoms.map((atom) => atom.text),
      met,
    );
    if (waiting.length > 0) return { slots: waiting.map((entry) => slotAt(entry, true)), words: [] };
  }
  const needed = open.findIndex(([, { optional }]) => !optional);
  const slots = (form.anyOrder || needed < 0 ? open : open.slice(0, needed + 1)).map((entry) =>
    slotAt(entry, false),
  );
  const words =
    needed >= 0 && !form.anyOrder
      ? []
      : entries.flatMap(([name, { word }]) => (word === undefined || met(name) ? [] : [word]));
  return { slots, words };
}

type Entry = readonly [string, Slot];

/** Quantities whose number is the last word: behind their own word, else the first open ones. */
function waitingForUnit(
  entries: readonly Entry[],
  words: readonly string[],
  met: (name: string) => boolean,
): readonly Entry[] {
  const before = words.at(-2);
  const named = entries.find(
    ([, { word, type }]) => word !== undefined && word === before && type.kind === "quantity",
  );
  if (named !== undefined) return [named];
  const open = entries.filter(
    ([name, { word, type }]) => word === undefined && !met(name) && type.kind === "quantity",
  );
  return open;
}

function slotAt([name, slot]: Entry, lacksUnit: boolean): SlotAt {
  return { name, slot, lacksUnit };
}
