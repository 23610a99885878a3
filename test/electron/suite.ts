// Run by the extension host itself: the extension as other extensions and the editor see it.
// biome-ignore lint/correctness/noUndeclaredDependencies: the editor brings it along.
import * as vscode from "vscode";

const RECORD = `headnote 1
bench north
  shows flow
  repeat 0,35 %
port intake
  side intake
  valve 2.020 in
  stem 11/32 in
session 2026-03-02
  bench north
  port intake
  target 28 inH2O
  air 71.5 degF 29.18 inHg 42 %RH
  leak none
  entry radiused
run i1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`;

/** Rejects with the first thing that is not as it should be. */
export async function run(): Promise<void> {
  const extension = vscode.extensions.getExtension("headnote.headnote");
  if (extension === undefined) throw new Error("the extension is not installed");
  await extension.activate();
  const document = await vscode.workspace.openTextDocument({ language: "headnote", content: RECORD });
  await vscode.window.showTextDocument(document);
  await until("findings arrive", () => {
    const codes = vscode.languages.getDiagnostics(document.uri).map(({ code }) => code);
    return codes.includes("decimal-comma");
  });
  await until("a document is formatted", async () => {
    const edits = await vscode.commands.executeCommand<readonly vscode.TextEdit[] | undefined>(
      "vscode.executeFormatDocumentProvider",
      document.uri,
      { insertSpaces: true, tabSize: 2 },
    );
    return (edits?.length ?? 0) > 0;
  });
  const settings = vscode.workspace.getConfiguration("headnote");
  await until("hints stand behind a row", async () => /cfm/.test(await hints(document)));
  await settings.update("hints.cd", true, vscode.ConfigurationTarget.Global);
  await until("a setting that is changed is heeded at once", async () => /Cd/.test(await hints(document)));
  await settings.update("hints.cd", undefined, vscode.ConfigurationTarget.Global);
  await until("and so is taking it back", async () => !/Cd/.test(await hints(document)));
}

async function hints(document: vscode.TextDocument): Promise<string> {
  const found = await vscode.commands.executeCommand<readonly vscode.InlayHint[] | undefined>(
    "vscode.executeInlayHintProvider",
    document.uri,
    new vscode.Range(0, 0, document.lineCount, 0),
  );
  return (found ?? []).map(({ label }) => (typeof label === "string" ? label : "")).join("\n");
}

async function until(what: string, isSo: () => boolean | Promise<boolean>): Promise<void> {
  for (let round = 0; round < 100; round++) {
    if (await isSo()) {
      console.log(`headnote: ok ${what}`);
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`it never came to this: ${what}`);
}
