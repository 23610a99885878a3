// Enter at the end of a row: the next row with the next lift and the target; elsewhere what Enter always does.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { ON_ENTER, onEnterAnswer } from "../../shared/messages/requests.ts";

/** A porter types on; a server that has not answered by then is not waited for. */
const PATIENCE = 150;

export async function continueTable(client: BaseLanguageClient): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  const isWanted = vscode.workspace.getConfiguration("headnote").get<boolean>("enter.continueTable", true);
  const next = editor && isWanted && editor.selections.length === 1 ? await ask(client, editor) : undefined;
  if (editor === undefined || next === undefined) {
    await vscode.commands.executeCommand("default:type", { text: "\n" });
    return;
  }
  const { range, newText } = next.edit;
  const place = new vscode.Range(
    range.start.line,
    range.start.character,
    range.end.line,
    range.end.character,
  );
  await editor.edit((edit) => edit.replace(place, newText));
  const cursor = new vscode.Position(next.cursor.line, next.cursor.character);
  editor.selection = new vscode.Selection(cursor, cursor);
  editor.revealRange(new vscode.Range(cursor, cursor));
}

async function ask(client: BaseLanguageClient, editor: vscode.TextEditor) {
  const { document, selection } = editor;
  if (!selection.isEmpty || !client.isRunning()) return undefined;
  const { line, character } = selection.active;
  const params = { uri: document.uri.toString(), position: { line, character } };
  const { version } = document;
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE));
  const answer = await Promise.race([client.sendRequest(ON_ENTER, params), late]).catch(() => null);
  const parsed = onEnterAnswer.safeParse(answer);
  // What was typed meanwhile must not be written over.
  if (!parsed.success || parsed.data === null || document.version !== version) return undefined;
  return parsed.data;
}
