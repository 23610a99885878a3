// Asks for bench, port and stage, and opens a new session with the cursor at its first lift.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { NAMES, namesAnswer } from "../../shared/messages/requests.ts";

const OTHER = "Another one…";

export async function newSession(client: BaseLanguageClient): Promise<void> {
  const uri = vscode.window.activeTextEditor?.document.uri.toString() ?? "";
  const answer = await client.sendRequest(NAMES, { uri });
  const { benches, ports, stages } = namesAnswer.parse(answer);
  const bench = await choose("Bench", benches);
  const port = bench === undefined ? undefined : await choose("Port", ports);
  const stage = port === undefined ? undefined : await choose("Stage", stages);
  if (bench === undefined || port === undefined || stage === undefined) return;
  const document = await vscode.workspace.openTextDocument({
    language: "headnote",
    content: "",
  });
  const editor = await vscode.window.showTextDocument(document);
  await editor.insertSnippet(new vscode.SnippetString(skeleton(bench, port, stage)));
}

/** One of the known names, or a new one. */
async function choose(what: string, known: readonly string[]): Promise<string | undefined> {
  const picked =
    known.length === 0
      ? OTHER
      : await vscode.window.showQuickPick([...known, OTHER], { title: `New Session: ${what}` });
  return picked === OTHER ? vscode.window.showInputBox({ title: `New Session: ${what}` }) : picked;
}

/** A session as a snippet: what is asked of every session is filled in one stop after the other. */
function skeleton(bench: string, port: string, stage: string): string {
  const plain = (text: string) => text.replace(/[\\$}]/g, "\\$&");
  const quoted = plain(stage.replace(/[\\"]/g, "\\$&"));
  return `headnote 1
include "\${1:shop.headnote}"

session \${CURRENT_YEAR}-\${CURRENT_MONTH}-\${CURRENT_DATE} "\${2:title}"
  bench      ${plain(bench)}
  port       ${plain(port)}
  target     \${3:28 inH2O}
  air        \${4:70 degF} \${5:29.50 inHg} \${6:45 %RH}
  leak       \${7:none}
  entry      \${8|radiused,clay,bare,manifold|}

run \${9:run-1}
  stage      "${quoted}"

  lift[\${10:in}]  depression[\${11:inH2O}]  flow[\${12:cfm}]  settle[s]
  \${13:0.100}  $0
`;
}
