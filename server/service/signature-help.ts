// The form of the line that is being typed, with the part that comes next.
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { signature, slotSignature, slotWords } from "../../grammar/signature.ts";
import type { Analysis } from "../analysis/project.ts";
import { commentOf } from "./comment-of.ts";
import { isInsideText } from "./inside-text.ts";
import { blockAt } from "./line-at.ts";
import type { Position } from "./position.ts";
import { slotsAfter } from "./slot-at.ts";

export interface SignatureHelp {
  readonly label: string;
  readonly doc: string;
  /** Each slot's part of the label, and what it takes. */
  readonly parts: readonly { readonly from: number; readonly to: number; readonly doc: string }[];
  /** The part that the cursor stands in. */
  readonly active: number;
}

export function signatureHelp({ scope }: Analysis, position: Position): SignatureHelp | undefined {
  const { outline } = scope.file;
  const text = outline.lines[position.line]?.text ?? "";
  const before = beforeValue(text.slice(0, position.column));
  const keyword = /^\s*(\S+)\s/.exec(before)?.[1];
  const placed = blockAt(outline, position.line);
  if (keyword === undefined || commentOf(before) !== undefined) return undefined;
  const isHeading = placed?.start === position.line;
  const form = isHeading ? findHeading(keyword) : placed && findProperty(placed.block.entity.kind, keyword);
  if (form === undefined) return undefined;
  const label = signature(form);
  let at = form.keyword.length;
  const parts = Object.entries(form.slots).map(([name, slot]) => {
    const from = at + 1;
    at = from + slotSignature(name, slot).length;
    return { from, to: at, doc: slotWords(slot.type) };
  });
  const { slots, words } = slotsAfter(form, before);
  const next = slots[0]?.name;
  const active = Object.entries(form.slots).findIndex(([name, { word }]) =>
    next === undefined ? word !== undefined && word === words[0] : name === next,
  );
  return { label, doc: form.doc, parts, active: active < 0 ? parts.length : active };
}

/** What stands before the word or the text that the cursor stands in. */
function beforeValue(typed: string): string {
  return isInsideText(typed) ? typed.slice(0, typed.lastIndexOf('"')) : typed.replace(/\S*$/, "");
}
