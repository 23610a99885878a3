// What the client can do, decided once; the features never ask.
import type { ClientCapabilities } from "vscode-languageserver";

export interface Capabilities {
  /** It can ask for findings and can be told that they have changed. */
  readonly pullsDiagnostics: boolean;
  readonly snippets: boolean;
  readonly watchesFiles: boolean;
  readonly hierarchicalSymbols: boolean;
  readonly labelsCodeActions: boolean;
  readonly preparesRename: boolean;
  readonly configuration: boolean;
  /** It answers Headnote's own requests. */
  readonly readsFiles: boolean;
  /** The commands that it can run from a lens; others are not offered. */
  readonly lensCommands: readonly string[];
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly refreshesTokens: boolean;
}

/** `options` are the client's initialization options. */
export function capabilitiesOf(client: ClientCapabilities, options: unknown): Capabilities {
  const { textDocument, workspace } = client;
  const own: { readonly readsFiles?: unknown; readonly lensCommands?: unknown } =
    typeof options === "object" && options !== null ? options : {};
  return {
    pullsDiagnostics:
      textDocument?.diagnostic !== undefined && workspace?.diagnostics?.refreshSupport === true,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    hierarchicalSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    labelsCodeActions: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    preparesRename: textDocument?.rename?.prepareSupport === true,
    configuration: workspace?.configuration === true,
    readsFiles: own.readsFiles === true,
    lensCommands: Array.isArray(own.lensCommands)
      ? own.lensCommands.filter((command) => typeof command === "string")
      : [],
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    refreshesTokens: workspace?.semanticTokens?.refreshSupport === true,
  };
}
