// One quiet word in the status bar's language item: whether the server runs, and how much it has found here.
import * as vscode from "vscode";
import type { Server } from "./server.ts";

export function registerStatus(server: Server): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem("headnote.findings", { language: "headnote" });
  item.name = "Headnote";
  item.command = { command: "headnote.showLog", title: "Show Log" };
  const show = (): void => {
    const state = server.state();
    if (state !== "running") {
      item.text = state;
      item.severity = vscode.LanguageStatusSeverity.Warning;
      return;
    }
    const uri = vscode.window.activeTextEditor?.document.uri;
    const count = uri === undefined ? 0 : vscode.languages.getDiagnostics(uri).length;
    item.text = count === 0 ? "no findings" : `${count} ${count === 1 ? "finding" : "findings"}`;
    item.severity = vscode.LanguageStatusSeverity.Information;
  };
  show();
  return vscode.Disposable.from(
    item,
    server.onDidChangeState(show),
    vscode.languages.onDidChangeDiagnostics(show),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}
