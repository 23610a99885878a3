// When the line that Enter made is filled in, and when it is left alone.
import { beforeEach, describe, expect, test, vi } from "vitest";
import { registerContinueTable } from "../../client/continue-table.ts";
import type { Server, ServerState } from "../../client/server.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

const NEXT = "     0.200               28.0  ";
const TEXT = "  lift[in]  depression[inH2O]  flow[cfm]\n     0.100               28.0       55.0\n";

interface Enter {
  readonly inserted?: string;
  readonly languageId?: string;
  readonly reason?: number;
  readonly cursors?: number;
  readonly state?: ServerState;
  /** What the server says, and what happens in the editor before it has said it. */
  readonly answer?: unknown;
  readonly meanwhile?: (document: { version: number }) => void;
  /** What stands on the line that Enter made. */
  readonly behind?: string;
}

/** The line that is written on, what it then reads; `undefined` if nothing is written. */
async function entered(enter: Enter): Promise<unknown> {
  const { inserted = "\n", languageId = "headnote", reason, cursors = 1, state = "running" } = enter;
  const { answer = { text: NEXT }, meanwhile, behind = "" } = enter;
  const document = { ...editor.textDocument(editor.Uri.parse("file:///a"), TEXT + behind), languageId };
  let written: unknown;
  const active = {
    document,
    selection: undefined as unknown,
    edit: async (make: (edit: unknown) => void) =>
      make({
        replace: ({ start: { line } }: editor.Range, text: string) => (written = { line, text }),
        insert: ({ line, character }: editor.Position, text: string) =>
          (written = { line, text: document.lineAt(line).text.slice(0, character) + text }),
      }),
  };
  editor.window.activeTextEditor = active;
  const ask = vi.fn(async () => {
    meanwhile?.(document);
    return answer;
  });
  registerContinueTable({ state: () => state, ask } as unknown as Server);
  const at = new editor.Position(1, 41);
  const change = { range: new editor.Range(at, at), text: inserted };
  const contentChanges = Array.from({ length: cursors }, () => change);
  for (const listener of editor.state.changed) listener({ document, contentChanges, reason });
  await new Promise((resolve) => setImmediate(resolve));
  editor.state.changed = [];
  // Who types on meanwhile would find it put back before what was typed.
  expect(active.selection).toBeUndefined();
  return written;
}

describe("Enter behind a row", () => {
  test("fills in the next one, with any line end and indent", async () => {
    for (const inserted of ["\n", "\r\n", "\n  "]) {
      expect(await entered({ inserted })).toEqual({ line: 2, text: NEXT });
    }
  });

  test("keeps the blanks that the editor has begun the line with, where they fit", async () => {
    for (const behind of ["     ", "  ", "          "]) {
      expect(await entered({ behind })).toEqual({ line: 2, text: NEXT });
    }
  });

  test("leaves the line alone where the server has nothing, nonsense, or no life", async () => {
    expect(await entered({ answer: null })).toBeUndefined();
    expect(await entered({ answer: { text: 4 } })).toBeUndefined();
    expect(await entered({ state: "starting" })).toBeUndefined();
    expect(await entered({ state: "not running" })).toBeUndefined();
    const fails = () => {
      throw new Error("gone");
    };
    expect(await entered({ meanwhile: fails })).toBeUndefined();
  });

  test("never overtakes what was typed meanwhile, and never what stands there", async () => {
    expect(
      await entered({
        meanwhile: (document) => {
          document.version++;
        },
      }),
    ).toBeUndefined();
    expect(await entered({ behind: "     0.300" })).toBeUndefined();
  });

  test("is nothing but Enter: no undo, paste, other language or second cursor", async () => {
    expect(await entered({ reason: 1 })).toBeUndefined();
    expect(await entered({ inserted: "\n0.200" })).toBeUndefined();
    expect(await entered({ inserted: "x" })).toBeUndefined();
    expect(await entered({ languageId: "plaintext" })).toBeUndefined();
    expect(await entered({ cursors: 2 })).toBeUndefined();
  });

  test("can be switched off", async () => {
    editor.state.settings["enter.continueTable"] = false;
    expect(await entered({})).toBeUndefined();
  });
});
