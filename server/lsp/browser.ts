// The server in a browser's worker: every file comes from the client.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { localTime } from "../service/local-time.ts";
import type { Serve } from "./server.ts";

export function connect(serve: Serve): void {
  const worker = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
  const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));
  serve(connection, {
    later: (task) => setTimeout(task, 0),
    now: () => localTime(new Date()),
  });
}
