// The task that runs `headnote check`, whose output the problem matcher reads; it needs a machine that runs programs.
import * as vscode from "vscode";

export const CHECK_TASK = "headnote";

/** Nothing is fetched for it: where the folder's packages have no `headnote`, the task says so and ends. */
const COMMAND = "npx --no-install headnote check --color never";

/** One task a folder; `{ "type": "headnote" }` in a tasks file is the same. */
export function registerCheckTask(): vscode.Disposable {
  return vscode.tasks.registerTaskProvider(CHECK_TASK, {
    provideTasks: () =>
      (vscode.workspace.workspaceFolders ?? [])
        .filter(isOnDisk)
        .map((folder) => checkTask({ type: CHECK_TASK }, folder)),
    resolveTask: ({ definition, scope }) =>
      typeof scope === "object" && isOnDisk(scope) ? checkTask(definition, scope) : undefined,
  });
}

function isOnDisk({ uri }: vscode.WorkspaceFolder): boolean {
  return uri.scheme === "file";
}

function checkTask(definition: vscode.TaskDefinition, folder: vscode.WorkspaceFolder): vscode.Task {
  const command = new vscode.ShellExecution(COMMAND);
  return new vscode.Task(definition, folder, "check", "headnote", command, "$headnote");
}
