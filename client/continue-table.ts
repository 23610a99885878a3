// After Enter at the end of a row: fills the new line with the next lift and the target depression.
import * as vscode from "vscode";
import { ON_ENTER, onEnterAnswer } from "../shared/messages/requests.ts";
import type { Server } from "./server.ts";

/**
 * Watches for the line that Enter has made. The editor's own Enter is not touched, so that a porter who types on is never
 * waited for: what has been typed meanwhile wins, and the line is then left as it is.
 */
export function registerContinueTable(server: Server): vscode.Disposable {
  return vscode.workspace.onDidChangeTextDocument(({ document, contentChanges, reason }) => {
    const [change, another] = contentChanges;
    const editor = vscode.window.activeTextEditor;
    if (change === undefined || another !== undefined || reason !== undefined) return;
    if (document.languageId !== "headnote" || editor?.document !== document) return;
    if (!change.range.isEmpty || !/^\r?\n[ \t]*$/.test(change.text)) return;
    if (!vscode.workspace.getConfiguration("headnote", document).get<boolean>("enter.continueTable", true))
      return;
    fill(server, editor, change.range.start).catch(() => undefined);
  });
}

async function fill(server: Server, editor: vscode.TextEditor, rowEnd: vscode.Position): Promise<void> {
  const { document } = editor;
  const { version } = document;
  if (server.state() !== "running") return;
  const position = { line: rowEnd.line, character: rowEnd.character };
  const answer = onEnterAnswer.parse(await server.ask(ON_ENTER, { uri: document.uri.toString(), position }));
  if (answer === null || document.version !== version) return;
  const line = document.lineAt(rowEnd.line + 1);
  if (!line.isEmptyOrWhitespace) return;
  // What is put in at the cursor takes it along. Set afterwards it would fall behind what is typed by then.
  await editor.edit((edit) => {
    if (answer.text.startsWith(line.text)) edit.insert(line.range.end, answer.text.slice(line.text.length));
    else edit.replace(line.range, answer.text);
  });
}
