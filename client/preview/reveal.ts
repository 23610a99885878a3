// Takes a person from the preview to a line of a record.
import * as vscode from "vscode";

/** Puts the cursor on a line, in the column where the file is open, and the keyboard there too where it is asked for. */
export async function revealLine(uri: vscode.Uri, line: number, focus: boolean): Promise<void> {
  const open = vscode.window.visibleTextEditors.find(
    ({ document }) => document.uri.toString() === uri.toString(),
  );
  const document = open?.document ?? (await vscode.workspace.openTextDocument(uri));
  const editor =
    open !== undefined && !focus
      ? open
      : await vscode.window.showTextDocument(document, {
          viewColumn: open?.viewColumn ?? vscode.ViewColumn.One,
          preserveFocus: !focus,
        });
  const at = document.lineAt(Math.min(line, document.lineCount - 1)).range;
  const start = new vscode.Position(
    at.start.line,
    document.lineAt(at.start.line).firstNonWhitespaceCharacterIndex,
  );
  editor.selection = new vscode.Selection(start, start);
  editor.revealRange(at, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}
