// The extension on a desktop or a remote host: the server is a process of its own.
import type { ExtensionContext } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { start } from "./extension.ts";

export function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath("dist/server.cjs");
  const server = { module, transport: TransportKind.ipc };
  return start(context, (options) => new LanguageClient("headnote", "Headnote", server, options));
}
