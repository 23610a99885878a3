// The server in a browser's worker: every file comes from the client.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { startServer } from "./server.ts";

const worker = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));

startServer(connection, {
  later: (task) => setTimeout(task, 0),
  today: () => new Date().toISOString().slice(0, 10),
});
