// The few pieces of Markdown that the reference is made of.

/** A target that links can point to. */
export function anchor(id: string): string {
  return `<a id="${id}"></a>`;
}

/** A stretch of code; text that has a backquote is set in two. */
export function code(text: string): string {
  return text.includes("`") ? `\`\` ${text} \`\`` : `\`${text}\``;
}

/** A block of code in a language. */
export function fence(language: string, text: string): string {
  return `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
}

/** A table whose columns stand under each other in the text too; no cell may have a line end. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [head, ...rows].map((cells) => cells.map((cell) => cell.replaceAll("|", "\\|")));
  const widths = head.map((_, at) => Math.max(...lines.map((cells) => cells[at]?.length ?? 0), 3));
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(" | ")} |`;
  const [first = "", ...others] = lines.map(line);
  return [first, line(widths.map((width) => "-".repeat(width))), ...others].join("\n");
}
