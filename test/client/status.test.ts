// The word beside the language's name.
import { beforeEach, expect, test, vi } from "vitest";
import type { Server, ServerState } from "../../client/server.ts";
import { registerStatus } from "../../client/status.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

function checkStatus(state: ServerState, diagnostics: number, text: string, severity: number): void {
  editor.state.diagnostics = diagnostics;
  editor.window.activeTextEditor = { document: { uri: editor.Uri.parse("file:///a.headnote") } };
  registerStatus({ state: () => state, onDidChangeState: () => undefined } as unknown as Server);
  expect(editor.statusItem).toMatchObject({ text, severity });
}

test("it counts the findings of the file that is shown", () => {
  const { Information } = editor.LanguageStatusSeverity;
  checkStatus("running", 0, "no findings", Information);
  checkStatus("running", 1, "1 finding", Information);
  checkStatus("running", 12, "12 findings", Information);
});

test("a server that does not run is never 'no findings'", () => {
  const { Warning } = editor.LanguageStatusSeverity;
  checkStatus("starting", 0, "starting", Warning);
  checkStatus("not running", 0, "not running", Warning);
});
