// The extension in a browser: the server is a worker.
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { start } from "./extension.ts";

declare const Worker: new (url: string) => ConstructorParameters<typeof LanguageClient>[3];

export function activate(context: ExtensionContext): Promise<void> {
  const url = Uri.joinPath(context.extensionUri, "dist/web/server.js").toString(true);
  return start(context, (options) => new LanguageClient("headnote", "Headnote", options, new Worker(url)));
}
