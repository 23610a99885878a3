// A text as a record writes it.

/** In double quotes, with its own escaped. */
export function quotedText(text: string): string {
  return `"${escapedText(text)}"`;
}

/** As it stands between the quotes. */
export function escapedText(text: string): string {
  return text.replace(/["\\]/g, "\\$&");
}
