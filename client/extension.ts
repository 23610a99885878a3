// The extension's body, the same on a desktop and in a browser: starts the server and registers the commands.
import * as vscode from "vscode";
import type { BaseLanguageClient, LanguageClientOptions } from "vscode-languageclient";
import { LIST_FILES, READ_FILE, type ReadFileAnswer } from "../shared/messages/requests.ts";
import { checkWorkspace } from "./commands/check-workspace.ts";
import { compareWithHead } from "./commands/compare-with-head.ts";
import { newSession } from "./commands/new-session.ts";
import { registerContinueTable } from "./continue-table.ts";
import { registerStatus } from "./status.ts";
import { listFiles, readFile } from "./workspace-files.ts";

/** Makes the client of one platform. */
export type MakeClient = (options: LanguageClientOptions) => BaseLanguageClient;

export async function start(context: vscode.ExtensionContext, makeClient: MakeClient): Promise<void> {
  const log = vscode.window.createOutputChannel("Headnote", { log: true });
  const client = makeClient({
    documentSelector: [{ language: "headnote" }],
    initializationOptions: { readsFiles: true },
    outputChannel: log,
    markdown: { isTrusted: false, supportHtml: false },
    diagnosticPullOptions: { onChange: true, onTabs: false },
  });
  client.onRequest<ReadFileAnswer, void>(READ_FILE, readFile);
  client.onRequest(LIST_FILES, listFiles);
  const commands: Readonly<Record<string, (...args: never[]) => unknown>> = {
    "headnote.newSession": () => newSession(client),
    "headnote.compareWithHead": compareWithHead,
    "headnote.checkWorkspace": checkWorkspace,
    "headnote.restartServer": async () => {
      await client.stop();
      await client.start();
    },
    "headnote.showLog": () => log.show(),
  };
  for (const [id, run] of Object.entries(commands)) {
    context.subscriptions.push(vscode.commands.registerCommand(id, run));
  }
  context.subscriptions.push(log, registerStatus(client), registerContinueTable(client), {
    dispose: () => client.dispose(),
  });
  await client.start();
}
