// Runs `headnote check` over the workspace as a task, whose output the problem matcher reads.
import * as vscode from "vscode";

export async function checkWorkspace(): Promise<void> {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder === undefined) {
    await vscode.window.showInformationMessage("Open a folder of records to check them all.");
    return;
  }
  const command = new vscode.ShellExecution("npx headnote check --color never");
  const task = new vscode.Task({ type: "headnote" }, folder, "check", "headnote", command, "$headnote");
  await vscode.tasks.executeTask(task);
}
