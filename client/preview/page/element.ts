// Makes elements; texts go in as texts only, and as what they are.
import { printable } from "../../../shared/text/printable.ts";

/** Nobody reads on; the line itself is a press away. */
const LONGEST = 400;

/** A text that neither turns the words around it nor floods the page. */
export function shownText(text: string): string {
  return printable(text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);
}

/** An element with a class, where one is given, and what is in it. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className = "",
  ...content: readonly (string | Node)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (className !== "") made.className = className;
  made.append(...content.map((each) => (typeof each === "string" ? shownText(each) : each)));
  return made;
}

/** A part of the page's own markup. */
export function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`);
  return found;
}
