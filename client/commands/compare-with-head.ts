// Opens the record beside the version that was committed last.
import * as vscode from "vscode";

/** What of the git extension's interface is used. */
interface GitApi {
  getRepository(uri: vscode.Uri): unknown;
  toGitUri(uri: vscode.Uri, ref: string): vscode.Uri;
}

interface GitExtension {
  /** Throws where git is switched off or not installed. */
  getAPI(version: 1): GitApi;
}

export async function compareWithHead(): Promise<void> {
  const uri = vscode.window.activeTextEditor?.document.uri;
  if (uri === undefined) return;
  const git = await gitApi();
  const problem =
    git === undefined
      ? "Git is not at hand in this editor, so there is nothing to compare with."
      : !git.getRepository(uri)
        ? "This record is not in a git repository, so there is nothing to compare with."
        : undefined;
  if (git === undefined || problem !== undefined) {
    await vscode.window.showInformationMessage(problem ?? "");
    return;
  }
  const name = uri.path.split("/").at(-1) ?? "record";
  await vscode.commands.executeCommand("vscode.diff", git.toGitUri(uri, "HEAD"), uri, `${name} (HEAD ↔ now)`);
}

async function gitApi(): Promise<GitApi | undefined> {
  const extension = vscode.extensions.getExtension<GitExtension>("vscode.git");
  try {
    return (await extension?.activate())?.getAPI(1);
  } catch {
    return undefined;
  }
}
