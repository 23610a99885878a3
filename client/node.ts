// The extension on a desktop or a remote host: the server is a process of its own.
import type { ExtensionContext } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { registerCheckTask } from "./check-task.ts";
import { start } from "./extension.ts";

export function activate(context: ExtensionContext): void {
  const module = context.asAbsolutePath("dist/server.js");
  const server = { module, transport: TransportKind.ipc };
  context.subscriptions.push(registerCheckTask());
  start(context, (options) => new LanguageClient("headnote", "Headnote", server, options));
}
