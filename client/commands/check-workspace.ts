// Checks all records: by the command, as a task, where programs may run; else what the server has found is shown.
import * as vscode from "vscode";
import { CHECK_TASK } from "../check-task.ts";

export async function checkWorkspace(): Promise<void> {
  const tasks = vscode.workspace.isTrusted ? await vscode.tasks.fetchTasks({ type: CHECK_TASK }) : [];
  const [task] = tasks;
  if (task === undefined) await vscode.commands.executeCommand("workbench.actions.view.problems");
  else await vscode.tasks.executeTask(task);
}
