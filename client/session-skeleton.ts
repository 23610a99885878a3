// The text of a new session: what was asked is filled in, what must be read off the bench is left open.

export interface SessionChoice {
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly bench: string;
  readonly port: string;
  readonly stage: string;
  /** Paths as the new file is to name them. */
  readonly includes: readonly string[];
}

/** The line of columns that holds where no record is open that shows another. */
const COLUMNS = "  lift[in]  depression[inH2O]  flow[cfm]  settle[s]";
const TARGET = "28 inH2O";

/**
 * The session, up to where the first lift is to be typed. `like` is the text of a record that is open: its columns and its
 * target are the shop's habit. Air, leak and entry are never filled in: a value that nobody read would be believed.
 */
export function sessionSkeleton({ date, bench, port, stage, includes }: SessionChoice, like: string): string {
  const columns = /^[ \t]*lift[ \t]*\[[^\n\r]*/m.exec(like)?.[0].trimEnd() ?? COLUMNS;
  const target = /^[ \t]+target[ \t]+([^\s#][^\n\r#]*)/m.exec(like)?.[1]?.trimEnd() ?? TARGET;
  return [
    "headnote 1",
    ...includes.map((path) => `include ${quoted(path)}`),
    "",
    `session ${date}`,
    `  bench      ${bench}`,
    `  port       ${port}`,
    `  target     ${target}`,
    "  air",
    "  leak",
    "  entry",
    "",
    `run ${wordOf(stage) || "run-1"}`,
    `  stage      ${quoted(stage)}`,
    "",
    columns,
    "  ",
  ].join("\n");
}

/** A name for the session's file, without its ending: the day and the stage. */
export function sessionFileName({ date, stage }: Pick<SessionChoice, "date" | "stage">): string {
  const word = wordOf(stage);
  return word === "" ? date : `${date}-${word}`;
}

/** A path from a folder to a file, both absolute and with `/`. */
export function pathFrom(folder: string, file: string): string {
  const from = folder.split("/").filter(Boolean);
  const to = file.split("/").filter(Boolean);
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  return [...from.slice(shared).map(() => ".."), ...to.slice(shared)].join("/");
}

function quoted(text: string): string {
  return `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;
}

/** A text as one word that may be an id and a part of a file's name; empty if nothing of it may. */
function wordOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);
}
