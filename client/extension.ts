// The extension's body, the same on a desktop and in a browser: registers all there is, and has the server come up behind it.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { LIST_FILES, READ_FILE, SHOW_CURVE, SHOW_PLACES } from "../shared/messages/requests.ts";
import { checkWorkspace } from "./commands/check-workspace.ts";
import { compareWithHead } from "./commands/compare-with-head.ts";
import { newSession } from "./commands/new-session.ts";
import { showPlaces } from "./commands/show-places.ts";
import { registerContinueTable } from "./continue-table.ts";
import type { ClientParts } from "./language-client.ts";
import { orSaysWhy } from "./or-says-why.ts";
import { registerPreview } from "./preview/panel.ts";
import { type Server, serverBehind } from "./server.ts";
import { registerStatus } from "./status.ts";
import { listFiles, readFile } from "./workspace-files.ts";

/** Loads the client of one platform, which is most of the extension's code. */
export type LoadClient = (parts: ClientParts) => Promise<BaseLanguageClient>;

type Commands = Readonly<Record<string, (...given: readonly unknown[]) => unknown>>;

let running: Server | undefined;

/** Nothing in it waits for the server: what is asked of that before it is up waits there. */
export function start(context: vscode.ExtensionContext, loadClient: LoadClient): void {
  const log = vscode.window.createOutputChannel("Headnote", { log: true });
  const lenses: Commands = { [SHOW_PLACES]: showPlaces };
  const parts: ClientParts = {
    log,
    lensCommands: [...Object.keys(lenses), SHOW_CURVE],
    answers: { [READ_FILE]: readFile, [LIST_FILES]: listFiles },
  };
  const server = serverBehind(
    () => loadClient(parts),
    (words) => log.error(words),
  );
  running = server;
  const commands: Commands = {
    "headnote.newSession": () => orSaysWhy(newSession(server)),
    "headnote.compareWithHead": compareWithHead,
    "headnote.checkWorkspace": checkWorkspace,
    "headnote.restartServer": () => orSaysWhy(server.restart()),
    "headnote.showLog": () => log.show(),
    ...lenses,
  };
  for (const [id, run] of Object.entries(commands)) {
    context.subscriptions.push(vscode.commands.registerCommand(id, run));
  }
  context.subscriptions.push(
    log,
    registerStatus(server),
    registerContinueTable(server),
    registerPreview(context, server, (words) => log.warn(words)),
  );
}

/** The editor waits for it a while. */
export async function deactivate(): Promise<void> {
  await running?.stop();
}
