// The extension's body, the same on a desktop and in a browser: starts the server and registers the commands.
import * as vscode from "vscode";
import {
  type BaseLanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
} from "vscode-languageclient";
import {
  LIST_FILES,
  READ_FILE,
  type ReadFileAnswer,
  SHOW_CURVE,
  SHOW_PLACES,
} from "../shared/messages/requests.ts";
import { checkWorkspace } from "./commands/check-workspace.ts";
import { compareWithHead } from "./commands/compare-with-head.ts";
import { newSession } from "./commands/new-session.ts";
import { restartServer } from "./commands/restart-server.ts";
import { showPlaces } from "./commands/show-places.ts";
import { registerContinueTable } from "./continue-table.ts";
import { registerPreview } from "./preview/panel.ts";
import { registerStatus } from "./status.ts";
import { listFiles, readFile } from "./workspace-files.ts";

/** Makes the client of one platform. */
export type MakeClient = (options: LanguageClientOptions) => BaseLanguageClient;

type Commands = Readonly<Record<string, (...given: readonly unknown[]) => unknown>>;

/** The server comes up behind the editor's back: what is asked of it before that waits for it. */
export function start(context: vscode.ExtensionContext, makeClient: MakeClient): void {
  const log = vscode.window.createOutputChannel("Headnote", { log: true });
  // What a lens can do when it is clicked; the server offers no other lenses.
  const lensCommands: Commands = { [SHOW_PLACES]: showPlaces };
  const client = makeClient({
    documentSelector: [{ language: "headnote" }],
    initializationOptions: { readsFiles: true, lensCommands: [...Object.keys(lensCommands), SHOW_CURVE] },
    synchronize: { configurationSection: "headnote" },
    // Under the problem matcher's own name, so that what the task finds stands in the place of the same findings.
    diagnosticCollectionProvider: {
      create: () => vscode.languages.createDiagnosticCollection("headnote"),
      dispose: (findings) => findings.dispose(),
    },
    outputChannel: log,
    // A request that failed stands in the log; nobody at a bench wants to be told.
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    markdown: { isTrusted: false, supportHtml: false },
    diagnosticPullOptions: { onChange: true, onTabs: false },
  });
  client.onRequest<ReadFileAnswer, void>(READ_FILE, readFile);
  client.onRequest(LIST_FILES, listFiles);
  const commands: Commands = {
    "headnote.newSession": () => newSession(client),
    "headnote.compareWithHead": compareWithHead,
    "headnote.checkWorkspace": checkWorkspace,
    "headnote.restartServer": () => restartServer(client),
    "headnote.showLog": () => log.show(),
    ...lensCommands,
  };
  for (const [id, run] of Object.entries(commands)) {
    context.subscriptions.push(vscode.commands.registerCommand(id, run));
  }
  context.subscriptions.push(
    log,
    registerStatus(client),
    registerContinueTable(client),
    registerPreview(context, client, (words) => log.warn(words)),
    { dispose: () => client.dispose().catch(() => undefined) },
  );
  client.start().catch((error: unknown) => log.error(`the language server did not start: ${error}`));
}
