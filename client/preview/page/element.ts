// Makes elements; texts go in as texts only.

/** An element with a class, where one is given, and what is in it. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className = "",
  ...content: readonly (string | Node)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (className !== "") made.className = className;
  made.append(...content);
  return made;
}

/** A part of the page's own markup. */
export function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`);
  return found;
}
