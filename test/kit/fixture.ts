// Fixtures are files of the format itself: what is expected of a line stands in a comment below it.

/** What is expected at a stretch of a line; lines and columns count from 0. */
export interface Mark {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly severity: string;
  readonly code: string;
}

/** One file of a fixture. Its marks are comments and stay in its text, so that its lines count as they are seen. */
export interface FixtureFile {
  readonly path: string;
  readonly text: string;
  readonly marks: readonly Mark[];
}

const FILE_LINE = /^#- (\/\S+)$/;
const MARK_LINE = /^#(<?)( *)(\^*) (error|warning|hint)\[([a-z-]+)\]$/;

/** The name of a fixture's first file, unless it begins with a `#- ` line. */
export const FIRST_FILE = "/main.headnote";

/**
 * The files of a fixture. Its first line end and the indentation that all its lines share are none of the text.
 *
 * `#   ^^^ error[code]` below a line marks the columns above the carets. `#<^^ error[code]` marks from column 0 on, where
 * no caret can stand. `#- /other.headnote` begins another file.
 */
export function parseFixture(fixture: string): FixtureFile[] {
  const files: { path: string; lines: string[] }[] = [];
  for (const line of dedent(fixture)) {
    const path = FILE_LINE.exec(line)?.[1];
    if (path !== undefined) files.push({ path, lines: [] });
    else {
      if (files.length === 0) files.push({ path: FIRST_FILE, lines: [] });
      files.at(-1)?.lines.push(line);
    }
  }
  return files.map(({ path, lines }) => ({ path, text: lines.join("\n"), marks: marksOf(lines) }));
}

/** The text with these marks in the place of its own: what a failing check shows beside the fixture. */
export function withMarks(text: string, marks: readonly Mark[]): string {
  const sorted = [...marks].sort(
    (a, b) => a.line - b.line || a.from - b.from || a.code.localeCompare(b.code),
  );
  return text
    .split("\n")
    .flatMap((line, index) => (MARK_LINE.test(line) ? [] : [line, ...drawn(sorted, index)]))
    .join("\n");
}

function drawn(marks: readonly Mark[], line: number): string[] {
  return marks
    .filter((mark) => mark.line === line)
    .map(({ from, to, severity, code }) => {
      const carets =
        from === 0
          ? `<${"^".repeat(Math.max(0, to - 2))}`
          : `${" ".repeat(from - 1)}${"^".repeat(to - from)}`;
      return `#${carets} ${severity}[${code}]`;
    });
}

function marksOf(lines: readonly string[]): Mark[] {
  const marks: Mark[] = [];
  let marked = 0;
  lines.forEach((line, index) => {
    const match = MARK_LINE.exec(line);
    if (match === null) {
      marked = index;
      return;
    }
    const [, start = "", gap = "", carets = "", severity = "", code = ""] = match;
    const from = start === "" ? 1 + gap.length : 0;
    const to = start === "" ? from + carets.length : 2 + carets.length;
    marks.push({ line: marked, from, to, severity, code });
  });
  return marks;
}

function dedent(fixture: string): string[] {
  const lines = fixture.replace(/^\n/, "").split("\n");
  const indents = lines
    .filter((line) => line.trim() !== "")
    .map((line) => line.length - line.trimStart().length);
  const shared = Math.min(...indents, Number.MAX_SAFE_INTEGER);
  return lines.map((line) => line.slice(shared).replace(/^ +$/, ""));
}
