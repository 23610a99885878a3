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

/** A table; no cell may have a line end. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n");
}
