// Opens the record beside the version that was committed last.
import * as vscode from "vscode";

/** What of the git extension's interface is used. */
interface GitApi {
  toGitUri(uri: vscode.Uri, ref: string): vscode.Uri;
}

export async function compareWithHead(): Promise<void> {
  const uri = vscode.window.activeTextEditor?.document.uri;
  const extension = vscode.extensions.getExtension<{ getAPI(version: 1): GitApi }>("vscode.git");
  if (uri === undefined) return;
  if (extension === undefined) {
    await vscode.window.showInformationMessage(
      "The editor's git extension is not there, so there is nothing to compare with.",
    );
    return;
  }
  const git = (extension.isActive ? extension.exports : await extension.activate()).getAPI(1);
  const name = uri.path.split("/").at(-1) ?? "record";
  await vscode.commands.executeCommand("vscode.diff", git.toGitUri(uri, "HEAD"), uri, `${name} (HEAD ↔ now)`);
}
