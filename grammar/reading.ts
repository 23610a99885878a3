// How far the reading of a line's words has come.
import type { Finding } from "../shared/finding.ts";
import type { Span } from "../shared/text/span.ts";
import type { Form } from "./directive.ts";
import type { SlotLayout } from "./slots.ts";
import type { Atom, DirectiveLine } from "./tree.ts";

/** A slot's words in the line. */
export interface Place {
  readonly from: number;
  readonly to: number;
}

/** What was read of a line so far, and the word that comes next. */
export interface Reading {
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

/** Whether a word leads a slot of its own instead of being the value of another. */
export function isSlotWord(reading: Reading, atom: Atom): boolean {
  const { named } = reading.layout;
  return named.size > 0 && atom.kind === "word" && named.has(atom.text);
}

/** Where the last word that was read ends. */
export function previousEnd(reading: Reading): number {
  return reading.line.atoms[reading.next - 1]?.to ?? reading.line.keyword.to;
}

export function spanOf(atom: Atom): Span {
  return { line: 0, from: atom.from, to: atom.to };
}
