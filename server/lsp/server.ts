// The server: ties the service to a connection, and nothing more.
import {
  CodeLensRefreshRequest,
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  MessageType,
  ShowMessageNotification,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import {
  type FileEnding,
  LIST_FILES,
  listFilesAnswer,
  READ_FILE,
  readFileAnswer,
} from "../../shared/messages/requests.ts";
import type { FileRead } from "../analysis/files.ts";
import { logPath } from "../analysis/traces.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { type Capabilities, capabilitiesOf } from "./capabilities.ts";
import { diagnostics } from "./diagnostics.ts";
import { FILE_OPERATIONS } from "./features/moving.ts";
import { registerPreview } from "./features/preview.ts";
import { registerFeatures } from "./features.ts";
import { openFiles, openPaths } from "./open-files.ts";
import type { Runtime } from "./runtime.ts";
import { readSettings, type Settings } from "./settings.ts";
import { pathOf, uriOf } from "./uris.ts";
import { workspaceService } from "./workspace-service.ts";

/** What the two connections hand themselves to; they do not load it, so that a bundle of both can leave one asleep. */
export type Serve = typeof startServer;

/** Serves a client over a connection; listens at once. */
export function startServer(connection: Connection, runtime: Runtime): void {
  const documents = new TextDocuments(TextDocument);
  connection.onInitialize((params) => initialize(connection, documents, runtime, params));
  documents.listen(connection);
  connection.listen();
}

function initialize(
  connection: Connection,
  documents: TextDocuments<TextDocument>,
  runtime: Runtime,
  params: InitializeParams,
): InitializeResult {
  const capabilities = capabilitiesOf(params.capabilities, params.initializationOptions);
  let settings: Settings = readSettings(undefined);
  const fetch = async (uri: string): Promise<FileRead> => {
    if (!capabilities.readsFiles) return { problem: "it is not there" };
    const answer = readFileAnswer.safeParse(await connection.sendRequest(READ_FILE, { uri }));
    return answer.success ? answer.data : { problem: "it cannot be read" };
  };
  const files = openFiles(documents, runtime, fetch);
  files.folders = (params.workspaceFolders ?? []).map(({ uri }) => pathOf(uri));
  const complained = new Set<string>();
  const complain = (sentence: string): void => {
    if (complained.has(sentence)) return;
    complained.add(sentence);
    // Not as a question: a client that refuses to be asked would leave an error that nobody catches.
    const shown = { type: MessageType.Warning, message: sentence };
    connection.sendNotification(ShowMessageNotification.method, shown).catch(() => undefined);
  };
  const workspace = workspaceService(files, complain);
  const filesEnding = async (ending: FileEnding): Promise<readonly string[]> => {
    if (!capabilities.readsFiles) return runtime.list?.(files.folders, ending) ?? [];
    const answer = listFilesAnswer.safeParse(await connection.sendRequest(LIST_FILES, { ending }));
    return answer.data?.uris.map(pathOf) ?? [];
  };
  const list = async (): Promise<readonly string[]> => [
    ...new Set([...openPaths(documents), ...(await filesEnding(".headnote"))]),
  ];
  const version = (path: string): number => documents.get(uriOf(path))?.version ?? -1;
  const told = diagnostics(connection, capabilities, runtime, {
    workspace,
    openPaths: () => openPaths(documents),
    version,
    list,
    most: () => settings.mostFindings,
  });
  const changed = (typed?: string): void => {
    workspace.changed();
    told.changed(typed);
  };
  const refreshShown = (): void => {
    // The client may be gone, or refuse; nobody waits for it.
    const { refreshesHints, refreshesLenses } = capabilities;
    if (refreshesHints) connection.languages.inlayHint.refresh().catch(() => undefined);
    if (refreshesLenses) connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
  };
  documents.onDidChangeContent(({ document }) => changed(pathOf(document.uri)));
  documents.onDidClose(({ document }) => {
    files.forget(pathOf(document.uri));
    workspace.changed();
    told.closed(pathOf(document.uri));
  });
  const touched = (uris: readonly string[]): void => {
    for (const uri of uris) files.forget(pathOf(uri));
    changed();
    refreshShown();
  };
  connection.onDidChangeWatchedFiles(({ changes }) => touched(changes.map(({ uri }) => uri)));
  // Whoever watches files by their names hears nothing of those in a folder that has another name now, or is gone.
  connection.workspace.onDidRenameFiles((done) =>
    touched(done.files.flatMap(({ oldUri, newUri }) => [oldUri, newUri])),
  );
  connection.workspace.onDidDeleteFiles((done) => touched(done.files.map(({ uri }) => uri)));
  const configured = async (): Promise<unknown> => {
    try {
      return await connection.workspace.getConfiguration("headnote");
    } catch {
      // A client that does not tell its settings has the usual ones.
      return undefined;
    }
  };
  connection.onDidChangeConfiguration(async ({ settings: pushed }) => {
    settings = readSettings(capabilities.configuration ? await configured() : pushed?.headnote);
    changed();
    refreshShown();
  });
  connection.onInitialized(async () => {
    if (capabilities.configuration) settings = readSettings(await configured());
    told.changed();
    if (capabilities.watchesFiles) {
      const watchers = ["**/*.headnote", "**/headnote.json", "**/*.csv"].map((globPattern) => ({
        globPattern,
      }));
      await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
    }
  });
  registerFeatures(connection, {
    capabilities,
    runtime,
    workspace,
    list,
    logs: () => filesEnding(".csv"),
    logText: async (record, written) => {
      const path = logPath(written, record, files);
      if (path === undefined) return undefined;
      // Where the client reads the files, the first try only asks for it.
      if ("problem" in files.read(path)) await files.fetchMissing();
      const read = files.read(path);
      return "text" in read ? read.text : undefined;
    },
    complain,
    settings: () => settings,
  });
  registerPreview(connection, workspace, version);
  return { capabilities: serverCapabilities(capabilities), serverInfo: { name: "headnote" } };
}

function serverCapabilities(client: Capabilities): InitializeResult["capabilities"] {
  return {
    textDocumentSync: TextDocumentSyncKind.Incremental,
    ...(client.pullsDiagnostics && {
      diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true },
    }),
    completionProvider: { triggerCharacters: [" ", "[", '"', "/"] },
    hoverProvider: true,
    signatureHelpProvider: { triggerCharacters: [" "] },
    inlayHintProvider: true,
    ...(client.lensCommands.length > 0 && { codeLensProvider: { resolveProvider: false } }),
    codeActionProvider: { codeActionKinds: ["quickfix", "source.fixAll.headnote"] },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
    semanticTokensProvider: {
      legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
      full: { delta: true },
      range: true,
    },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: client.preparesRename ? { prepareProvider: true } : true,
    documentLinkProvider: {},
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: false },
      fileOperations: FILE_OPERATIONS,
    },
  };
}
