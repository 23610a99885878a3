// How a file is built: outline, symbols of all files, folding, selections that grow.
import {
  type DocumentSymbol,
  FoldingRangeKind,
  type SelectionRange,
  SymbolKind,
} from "vscode-languageserver";
import { folding } from "../../service/folding.ts";
import { selection } from "../../service/selection.ts";
import { type FileSymbol, matching, symbols } from "../../service/symbols.ts";
import { toRange } from "../to-protocol.ts";
import { uriOf } from "../uris.ts";
import type { Asked, Document, Place } from "./asked.ts";

export function registerStructure({ connection, guard, analysed, others, capabilities }: Asked): void {
  connection.onDocumentSymbol(
    guard("outline", [], async (params: Document) => {
      const analysis = await analysed(params);
      const found = analysis === undefined ? [] : symbols(analysis.scope.file);
      const { uri } = params.textDocument;
      return capabilities.hierarchicalSymbols
        ? found.map(toSymbol)
        : found.map((symbol) => ({
            name: symbol.name,
            kind: SYMBOL_KINDS[symbol.kind],
            location: { uri, range: toRange(symbol.span) },
          }));
    }),
  );
  connection.onWorkspaceSymbol(
    guard("workspace symbols", [], async ({ query }: { query: string }) => {
      const scopes = await others();
      const files = scopes.map(({ file }) => file);
      return matching(files, query).map(({ file, symbol }) => ({
        name: symbol.name,
        kind: SYMBOL_KINDS[symbol.kind],
        containerName: symbol.detail,
        location: { uri: uriOf(file.path), range: toRange(symbol.span) },
      }));
    }),
  );
  connection.onFoldingRanges(
    guard("folding", [], async (params: Document) => {
      const analysis = await analysed(params);
      const found = analysis === undefined ? [] : folding(analysis.scope.file);
      return found.map(({ first, last, kind }) => ({
        startLine: first,
        endLine: last,
        ...(kind !== "block" && { kind: FOLDING_KINDS[kind] }),
      }));
    }),
  );
  connection.onSelectionRanges(
    guard("selection", [], async (params: Document & { positions: Place["position"][] }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      return params.positions.map(({ line, character }) =>
        nested(selection(analysis.scope.file, { line, column: character })),
      );
    }),
  );
}

const FOLDING_KINDS = { includes: FoldingRangeKind.Imports, comment: FoldingRangeKind.Comment };

const SYMBOL_KINDS: Readonly<Record<FileSymbol["kind"], SymbolKind>> = {
  bench: SymbolKind.Interface,
  plate: SymbolKind.Constant,
  engine: SymbolKind.Struct,
  head: SymbolKind.Class,
  port: SymbolKind.Property,
  cam: SymbolKind.Object,
  session: SymbolKind.Event,
  run: SymbolKind.Function,
  trace: SymbolKind.Array,
  ladder: SymbolKind.Array,
  map: SymbolKind.Array,
  "plate-check": SymbolKind.Array,
};

function toSymbol({ kind, name, detail, lines, lastColumn, span }: FileSymbol): DocumentSymbol {
  return {
    name,
    detail,
    kind: SYMBOL_KINDS[kind],
    range: { start: { line: lines[0], character: 0 }, end: { line: lines[1], character: lastColumn } },
    selectionRange: toRange(span),
  };
}

/** The protocol nests from the inside out. */
function nested(stretches: ReturnType<typeof selection>): SelectionRange {
  let parent: SelectionRange | undefined;
  for (const { start, end } of [...stretches].reverse()) {
    const range = {
      start: { line: start.line, character: start.column },
      end: { line: end.line, character: end.column },
    };
    parent = parent === undefined ? { range } : { range, parent };
  }
  return parent ?? { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
}
