// The language client on a desktop or a remote host: the server is a process of its own.
import type { ExtensionContext } from "vscode";
import { type BaseLanguageClient, LanguageClient, TransportKind } from "vscode-languageclient/node";
import { type ClientParts, languageClient } from "./language-client.ts";

export function nodeClient(context: ExtensionContext, parts: ClientParts): BaseLanguageClient {
  const server = { module: context.asAbsolutePath("dist/server.js"), transport: TransportKind.ipc };
  return languageClient((options) => new LanguageClient("headnote", "Headnote", server, options), parts);
}
