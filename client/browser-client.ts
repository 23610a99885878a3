// The language client in a browser: the server is a worker.
import { type ExtensionContext, Uri } from "vscode";
import {
  type BaseLanguageClient,
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { type ClientParts, languageClient } from "./language-client.ts";

type ServerWorker = ConstructorParameters<typeof BrowserMessageReader>[0] & { terminate(): void };

declare const Worker: new (url: string) => ServerWorker;

export function browserClient(context: ExtensionContext, parts: ClientParts): BaseLanguageClient {
  const url = Uri.joinPath(context.extensionUri, "dist/server.js").toString(true);
  let worker: ServerWorker | undefined;
  const end = (): void => worker?.terminate();
  // A server that is started again is a new worker. Editors put a worker of their own in the place of the browser's, which
  // the library would not know for one; so it is handed the two ends.
  const serve = async (): Promise<MessageTransports> => {
    end();
    worker = new Worker(url);
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push({ dispose: end });
  return languageClient((options) => new LanguageClient("headnote", "Headnote", serve, options), parts);
}
