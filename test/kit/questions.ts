// Everything that a client may ask of a document, as it should be asked; the record of `shopRecord` has these places.

export const POSITION = { line: 24, character: 8 };

export const documentOf = (uri: string) => ({ textDocument: { uri } });

/** Parameters by method. */
export function questions(uri: string): Readonly<Record<string, object>> {
  const document = documentOf(uri);
  const position = POSITION;
  const range = { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } };
  const options = { tabSize: 2, insertSpaces: true };
  return {
    "textDocument/diagnostic": document,
    "textDocument/completion": { ...document, position },
    "textDocument/hover": { ...document, position },
    "textDocument/signatureHelp": { ...document, position },
    "textDocument/inlayHint": { ...document, range },
    "textDocument/codeLens": document,
    "textDocument/codeAction": { ...document, range, context: { diagnostics: [] } },
    "textDocument/formatting": { ...document, options },
    "textDocument/rangeFormatting": { ...document, range, options },
    "textDocument/onTypeFormatting": { ...document, position, ch: "\n", options },
    "textDocument/semanticTokens/full": document,
    "textDocument/semanticTokens/full/delta": { ...document, previousResultId: "" },
    "textDocument/semanticTokens/range": { ...document, range },
    "textDocument/documentSymbol": document,
    "textDocument/foldingRange": document,
    "textDocument/selectionRange": { ...document, positions: [position] },
    "textDocument/definition": { ...document, position: { line: 17, character: 13 } },
    "textDocument/references": {
      ...document,
      position: { line: 2, character: 7 },
      context: { includeDeclaration: true },
    },
    "textDocument/documentHighlight": { ...document, position: { line: 2, character: 7 } },
    "textDocument/prepareRename": { ...document, position: { line: 2, character: 7 } },
    "textDocument/rename": { ...document, position: { line: 2, character: 7 }, newName: "south" },
    "textDocument/documentLink": document,
    "workspace/symbol": { query: "" },
    "workspace/diagnostic": { previousResultIds: [] },
    "workspace/willRenameFiles": { files: [{ oldUri: uri, newUri: "file:///shop/tuesday.headnote" }] },
    "headnote/onEnter": { uri, position },
  };
}
