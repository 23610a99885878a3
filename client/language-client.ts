// The language client, told what this editor does for the server; it is loaded once the extension is active.
import * as vscode from "vscode";
import {
  type BaseLanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
} from "vscode-languageclient";

/** What the rest of the extension has for it. */
export interface ClientParts {
  readonly log: vscode.LogOutputChannel;
  /** What a lens can do when it is clicked; the server offers no other lenses. */
  readonly lensCommands: readonly string[];
  /** What the server may ask, by method. */
  readonly answers: Readonly<Record<string, (params: unknown) => Promise<unknown>>>;
}

/** Makes the client of one platform. */
export type MakeClient = (options: LanguageClientOptions) => BaseLanguageClient;

export function languageClient(
  make: MakeClient,
  { log, lensCommands, answers }: ClientParts,
): BaseLanguageClient {
  const client = make({
    documentSelector: [{ language: "headnote" }],
    initializationOptions: { readsFiles: true, lensCommands },
    synchronize: { configurationSection: "headnote" },
    // Under the problem matcher's own name, so that what the task finds stands in the place of the same findings.
    diagnosticCollectionProvider: {
      create: () => vscode.languages.createDiagnosticCollection("headnote"),
      dispose: (findings) => findings.dispose(),
    },
    outputChannel: log,
    // A request that failed stands in the log; nobody at a bench wants to be told.
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    markdown: { isTrusted: false, supportHtml: false },
    diagnosticPullOptions: { onChange: true, onTabs: false },
  });
  for (const [method, answer] of Object.entries(answers)) client.onRequest(method, answer);
  return client;
}
