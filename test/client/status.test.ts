// The word beside the language's name.
import { beforeEach, expect, test, vi } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { registerStatus } from "../../client/status.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));
// The library itself asks for a real editor as soon as it is loaded.
const { State } = vi.hoisted(() => ({ State: { Stopped: 1, Running: 2, Starting: 3, StartFailed: 4 } }));
vi.mock("vscode-languageclient", () => ({ State }));

beforeEach(editor.reset);

function checkStatus(state: number, diagnostics: number, text: string, severity: number): void {
  editor.state.diagnostics = diagnostics;
  editor.window.activeTextEditor = { document: { uri: editor.Uri.parse("file:///a.headnote") } };
  registerStatus({ state, onDidChangeState: () => undefined } as unknown as BaseLanguageClient);
  expect(editor.statusItem).toMatchObject({ text, severity });
}

test("it counts the findings of the file that is shown", () => {
  const { Information } = editor.LanguageStatusSeverity;
  checkStatus(State.Running, 0, "no findings", Information);
  checkStatus(State.Running, 1, "1 finding", Information);
  checkStatus(State.Running, 12, "12 findings", Information);
});

test("a server that does not run is never 'no findings'", () => {
  const { Warning } = editor.LanguageStatusSeverity;
  checkStatus(State.Starting, 0, "starting", Warning);
  checkStatus(State.Stopped, 0, "not running", Warning);
  checkStatus(State.StartFailed, 0, "not running", Warning);
});
