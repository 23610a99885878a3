// A client and the server in one process, over streams, as an editor and its server talk.
import { PassThrough } from "node:stream";
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type RegistrationParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import type { FileRead } from "../../server/analysis/files.ts";
import { startServer } from "../../server/lsp/server.ts";
import { pathOf, uriOf } from "../../server/lsp/uris.ts";
import { LIST_FILES, READ_FILE } from "../../shared/messages/requests.ts";

export interface Session {
  readonly client: ProtocolConnection;
  /** What the server says that it can do. */
  readonly announced: InitializeResult["capabilities"];
  /** What the server registers once it is up; never settles where the client lets it register nothing. */
  readonly registered: Promise<readonly string[]>;
  readonly open: (uri: string, text: string) => Promise<void>;
  readonly change: (uri: string, text: string) => Promise<void>;
  readonly ask: <T>(method: string, params: unknown) => Promise<T>;
  /** The next findings that the server publishes for a file. */
  readonly published: (uri: string) => Promise<PublishDiagnosticsParams>;
  /** Takes a file off the "disk" without a word. */
  readonly remove: (uri: string) => void;
  readonly close: () => void;
}

/** What a client that can do everything says of itself. */
export const FULL: ClientCapabilities = {
  textDocument: {
    diagnostic: {},
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    rename: { prepareSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
  },
  workspace: { diagnostics: { refreshSupport: true } },
};

/**
 * Starts a session; `files` are those on the "disk", by URI. With `through` as `client` the server has no disk, as in a
 * browser, and the client answers for it, a little later.
 */
export async function session(
  capabilities: ClientCapabilities,
  files: Readonly<Record<string, string>> = {},
  through: "disk" | "client" = "disk",
  lensCommands: readonly string[] = [],
): Promise<Session> {
  const up = new PassThrough();
  const down = new PassThrough();
  const disk = new Map(Object.entries(files).map(([uri, text]) => [pathOf(uri), text]));
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  const readNow = (path: string): FileRead => {
    const text = disk.get(path);
    return text === undefined ? { problem: "it is not there" } : { text };
  };
  const list = (_: unknown, ending: string) => [...disk.keys()].filter((path) => path.endsWith(ending));
  startServer(server, {
    ...(through === "disk" && { readNow, root: () => "/shop", list }),
    later: (task) => setImmediate(task),
    now: () => "2026-11-25T09:30+01:00",
  });
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const waiting = new Map<string, (params: PublishDiagnosticsParams) => void>();
  client.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
    waiting.get(params.uri)?.(params);
    waiting.delete(params.uri);
  });
  client.onRequest("workspace/diagnostic/refresh", () => null);
  client.onRequest(LIST_FILES, ({ ending }: { readonly ending: string }) => ({
    uris: list([], ending).map(uriOf),
  }));
  client.onRequest<FileRead, void>(READ_FILE, async ({ uri }: { readonly uri: string }) => {
    await new Promise(setImmediate);
    return readNow(pathOf(uri));
  });
  const registered = new Promise<readonly string[]>((resolve) => {
    client.onRequest("client/registerCapability", (params: RegistrationParams) => {
      resolve(params.registrations.map(({ method }) => method));
      return null;
    });
  });
  client.listen();
  const folder = { uri: "file:///shop", name: "shop" };
  const announced = await client.sendRequest<InitializeResult>("initialize", {
    processId: null,
    rootUri: null,
    capabilities,
    initializationOptions: { readsFiles: through === "client", lensCommands },
    workspaceFolders: [folder],
  });
  await client.sendNotification("initialized", {});
  let version = 1;
  return {
    client,
    announced: announced.capabilities,
    registered,
    open: (uri, text) =>
      client.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "headnote", version, text },
      }),
    change: (uri, text) =>
      client.sendNotification("textDocument/didChange", {
        textDocument: { uri, version: ++version },
        contentChanges: [{ text }],
      }),
    ask: (method, params) => client.sendRequest(method, params),
    published: (uri) => new Promise((resolve) => waiting.set(uri, resolve)),
    remove: (uri) => disk.delete(pathOf(uri)),
    close: () => {
      client.dispose();
      server.dispose();
    },
  };
}
