// A word that leads to a line of the record.
import { element } from "./element.ts";

/** Tells the line from 0; `focus` is set where the keyboard asked, or a double click. */
export type Reveal = (line: number, focus: boolean) => void;

export function lineButton(line: number, words: string, name: string, reveal: Reveal): HTMLButtonElement {
  const button = element("button", "line", words);
  button.type = "button";
  button.setAttribute("aria-label", name);
  // A click without a count was made by a key.
  button.addEventListener("click", (event) => reveal(line, event.detail === 0));
  button.addEventListener("dblclick", () => reveal(line, true));
  return button;
}
