// Registers the language features: each asks the service and turns its answer into the protocol's form.
import {
  CompletionItemKind,
  type Connection,
  DocumentHighlightKind,
  type DocumentSymbol,
  FoldingRangeKind,
  InsertTextFormat,
  type Location,
  MarkupKind,
  type Range,
  ResponseError,
  type SelectionRange,
  SymbolKind,
} from "vscode-languageserver";
import {
  NAMES,
  type NamesAnswer,
  namesParams,
  ON_ENTER,
  type OnEnterAnswer,
  onEnterParams,
  SHOW_CURVE,
  SHOW_PLACES,
  type ShowPlacesArguments,
} from "../../shared/messages/requests.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { type BaselineOf, baselines } from "../service/baseline.ts";
import { codeActions, mendAll } from "../service/code-actions.ts";
import { codeLenses, type Lens } from "../service/code-lens.ts";
import { type Completion, completion } from "../service/completion.ts";
import { definition } from "../service/definition.ts";
import { documentLinks } from "../service/document-links.ts";
import type { Judged } from "../service/findings.ts";
import { folding } from "../service/folding.ts";
import { formatEdits } from "../service/format-edits.ts";
import { hover } from "../service/hover.ts";
import { inlayHints } from "../service/inlay-hints.ts";
import { nextRow } from "../service/on-enter.ts";
import { references } from "../service/references.ts";
import { renamable, rename } from "../service/rename.ts";
import { selection } from "../service/selection.ts";
import { semanticTokens, TOKEN_MODIFIERS, TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { signatureHelp } from "../service/signature-help.ts";
import { type FileSymbol, matching, symbols } from "../service/symbols.ts";
import type { Capabilities } from "./capabilities.ts";
import { guarded } from "./guard.ts";
import type { Runtime } from "./runtime.ts";
import type { Settings } from "./settings.ts";
import { toDiagnostic, toRange, toTextEdit, toWorkspaceEdit } from "./to-protocol.ts";
import { pathOf, uriOf } from "./uris.ts";
import type { WorkspaceService } from "./workspace-service.ts";

export interface FeatureSource {
  readonly capabilities: Capabilities;
  readonly runtime: Runtime;
  readonly workspace: WorkspaceService;
  readonly list: () => Promise<readonly string[]>;
  readonly settings: () => Settings;
}

interface Document {
  readonly textDocument: { readonly uri: string };
}

interface Place extends Document {
  readonly position: { readonly line: number; readonly character: number };
}

/** Other files are looked through for names, but not without end. */
const MOST_FILES = 5000;

export function registerFeatures(connection: Connection, source: FeatureSource): void {
  const { capabilities, runtime, workspace, list, settings } = source;
  const guard = <P, R>(name: string, otherwise: R, handler: (params: P) => R | Promise<R>) =>
    guarded<P, R>(name, connection.console, otherwise, handler);

  const read = async ({ textDocument }: Document) => {
    const checked = await workspace.check(pathOf(textDocument.uri));
    return "problem" in checked ? undefined : checked;
  };
  const analysed = async (document: Document): Promise<Analysis | undefined> =>
    (await read(document))?.analysis;
  const baselinesFor = async (analysis: Analysis): Promise<BaselineOf> => {
    const analyses = new Map<string, Analysis>();
    for (const { path } of analysis.scope.files.slice(1)) {
      const checked = await workspace.check(path);
      if (!("problem" in checked)) analyses.set(path, checked.analysis);
    }
    return baselines(analysis, analyses);
  };
  const others = async (): Promise<readonly Scope[]> => {
    const paths = (await list()).slice(0, MOST_FILES);
    const found = await Promise.all(paths.map((path) => workspace.check(path)));
    return found.flatMap((checked) => ("problem" in checked ? [] : [checked.analysis.scope]));
  };

  connection.onCompletion(
    guard("completion", [], async (params: Place & { context?: { triggerCharacter?: string } }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      const text = analysis.scope.file.outline.lines[params.position.line]?.text ?? "";
      const paths = text.includes("include") ? await list() : [];
      const trigger = params.context?.triggerCharacter;
      const items = completion(analysis, at(params), { today: runtime.today(), paths, trigger });
      const { line } = params.position;
      return items.map((item, index) => toCompletion(item, index, line, capabilities.snippets));
    }),
  );
  connection.onHover(
    guard("hover", null, async (params: Place) => {
      const analysis = await analysed(params);
      const found = analysis && hover(analysis, at(params));
      return found === undefined
        ? null
        : { contents: { kind: MarkupKind.Markdown, value: found.text }, range: toRange(found.span) };
    }),
  );
  connection.onSignatureHelp(
    guard("signature help", null, async (params: Place) => {
      const analysis = await analysed(params);
      const found = analysis && signatureHelp(analysis, at(params));
      if (found === undefined) return null;
      const parameters = found.parts.map(({ from, to, doc }) => ({
        label: [from, to] as [number, number],
        documentation: doc,
      }));
      return {
        signatures: [{ label: found.label, documentation: found.doc, parameters }],
        activeSignature: 0,
        activeParameter: found.active,
      };
    }),
  );
  connection.languages.inlayHint.on(
    guard("hints", [], async (params: Document & { range: Range }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      const { start, end } = params.range;
      const baselineOf = await baselinesFor(analysis);
      const baseline = (result: RunResult) => baselineOf(result)?.result;
      return inlayHints(analysis, start.line, end.line, settings().hints, baseline).map(
        ({ line, column, label }) => ({
          position: { line, character: column },
          label,
          paddingLeft: true,
        }),
      );
    }),
  );
  connection.onCodeLens(
    guard("lenses", [], async (params: Document) => {
      const analysis = settings().lenses ? await analysed(params) : undefined;
      if (analysis === undefined) return [];
      const { uri } = params.textDocument;
      return codeLenses(analysis, await baselinesFor(analysis))
        .map((lens) => toCodeLens(uri, lens))
        .filter(({ command }) => capabilities.lensCommands.includes(command.command));
    }),
  );
  connection.onCodeAction(
    guard("code actions", [], async (params: Document & { range: Range; context: { only?: string[] } }) => {
      const checked = await read(params);
      if (checked === undefined) return [];
      const { analysis, findings } = checked;
      const { uri } = params.textDocument;
      const path = pathOf(uri);
      const only = params.context.only ?? [];
      if (only.some((kind) => kind.startsWith("source"))) {
        const edits = mendAll(analysis, findings);
        if (edits.length === 0) return [];
        const edit = toWorkspaceEdit(new Map([[path, edits]]));
        return [{ title: "Mend all that can be mended", kind: "source.fixAll.headnote", edit }];
      }
      return codeActions(analysis, findings, params.range.start.line, params.range.end.line).map(
        (action) => ({
          title: action.title,
          kind: "quickfix",
          isPreferred: action.isPreferred,
          edit: toWorkspaceEdit(new Map([[path, action.edits]])),
          ...diagnosticsOf(path, action.mends),
        }),
      );
    }),
  );
  connection.onDocumentFormatting(
    guard("formatting", [], async (params: Document) => {
      const analysis = await analysed(params);
      return analysis === undefined ? [] : formatEdits(analysis.scope.file).map(toTextEdit);
    }),
  );
  connection.onDocumentRangeFormatting(
    guard("range formatting", [], async (params: Document & { range: Range }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      const { start, end } = params.range;
      const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
      return formatEdits(analysis.scope.file, start.line, last).map(toTextEdit);
    }),
  );
  connection.onDocumentOnTypeFormatting(
    guard("formatting on Enter", [], async (params: Place) => {
      const analysis = await analysed(params);
      const line = params.position.line - 1;
      if (analysis === undefined || line < 0) return [];
      const { file } = analysis.scope;
      const above = formatEdits(file, line, line).map(toTextEdit);
      const own = file.outline.lines[line + 1]?.text ?? "";
      const next = nextRow(analysis, { line, column: file.outline.lines[line]?.text.length ?? 0 });
      if (next === undefined || own.trim() !== "") return above;
      return [...above, { range: toRange({ line: line + 1, from: 0, to: own.length }), newText: next }];
    }),
  );
  connection.languages.semanticTokens.on(
    guard("semantic tokens", { data: [] }, async (params: Document) => {
      const analysis = await analysed(params);
      return { data: analysis === undefined ? [] : tokenData(analysis) };
    }),
  );
  connection.languages.semanticTokens.onRange(
    guard("semantic tokens", { data: [] }, async (params: Document & { range: Range }) => {
      const analysis = await analysed(params);
      const { start, end } = params.range;
      return { data: analysis === undefined ? [] : tokenData(analysis, start.line, end.line) };
    }),
  );
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
      return scopes.flatMap(({ file }) =>
        matching(file, query).map((symbol) => ({
          name: symbol.name,
          kind: SYMBOL_KINDS[symbol.kind],
          containerName: symbol.detail,
          location: { uri: uriOf(file.path), range: toRange(symbol.span) },
        })),
      );
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
  connection.onDefinition(
    guard("definition", null, async (params: Place) => {
      const analysis = await analysed(params);
      const found = analysis && definition(analysis, at(params));
      return found === undefined ? null : { uri: uriOf(found.path), range: toRange(found.span) };
    }),
  );
  connection.onReferences(
    guard(
      "references",
      [],
      async (params: Place & { context: { includeDeclaration: boolean } }): Promise<Location[]> => {
        const analysis = await analysed(params);
        if (analysis === undefined) return [];
        return references(analysis, at(params), await others())
          .filter(({ role }) => params.context.includeDeclaration || role === "use")
          .map(({ path, span }) => ({ uri: uriOf(path), range: toRange(span) }));
      },
    ),
  );
  connection.onDocumentHighlight(
    guard("highlight", [], async (params: Place) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      return references(analysis, at(params), [])
        .filter(({ path }) => path === analysis.scope.file.path)
        .map(({ span, role }) => ({
          range: toRange(span),
          kind: role === "definition" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
        }));
    }),
  );
  connection.onPrepareRename(
    guard("rename", null, async (params: Place) => {
      const analysis = await analysed(params);
      const name = analysis && renamable(analysis, at(params));
      return name === undefined ? null : { range: toRange(name.span), placeholder: name.id };
    }),
  );
  connection.onRenameRequest(
    guarded("rename", connection.console, null, async (params: Place & { newName: string }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return null;
      const renamed = rename(analysis, at(params), params.newName, await others());
      if ("problem" in renamed) throw new ResponseError(-32803, renamed.problem);
      return toWorkspaceEdit(renamed);
    }),
  );
  connection.onDocumentLinks(
    guard("links", [], async (params: Document) => {
      const analysis = await analysed(params);
      const found = analysis === undefined ? [] : documentLinks(analysis);
      return found.map(({ path, span }) => ({ range: toRange(span), target: uriOf(path) }));
    }),
  );
  connection.onRequest<OnEnterAnswer, void>(
    ON_ENTER,
    guard("Enter", null, async (params: unknown): Promise<OnEnterAnswer> => {
      const { uri, position } = onEnterParams.parse(params);
      const analysis = await analysed({ textDocument: { uri } });
      const text = analysis && nextRow(analysis, { line: position.line, column: position.character });
      return text === undefined ? null : { text };
    }),
  );
  const nothing: NamesAnswer = { benches: [], ports: [], stages: [] };
  connection.onRequest<NamesAnswer, void>(
    NAMES,
    guard("names", nothing, async (params: unknown): Promise<NamesAnswer> => {
      namesParams.parse(params);
      const scopes = await others();
      const named = (kind: "bench" | "port") =>
        scopes.flatMap(({ file }) => [...(file.defines.get(kind)?.keys() ?? [])]);
      const stages = scopes.flatMap(({ file }) => file.runs.flatMap(({ entity }) => entity.stage ?? []));
      const once = (list: readonly string[]) => [...new Set(list)];
      return { benches: once(named("bench")), ports: once(named("port")), stages: once(stages) };
    }),
  );
}

function at({ position }: Place) {
  return { line: position.line, column: position.character };
}

function diagnosticsOf(path: string, judged: Judged | undefined) {
  return judged === undefined ? {} : { diagnostics: [toDiagnostic(path, judged)] };
}

function toCodeLens(uri: string, lens: Lens) {
  const { title } = lens;
  const position = { line: lens.line, character: 0 };
  const range = { start: position, end: position };
  if (lens.kind === "curve")
    return { range, command: { title, command: SHOW_CURVE, arguments: [uri, lens.run] } };
  const { path, start } = lens.baseline;
  const places = [{ uri: uriOf(path), position: { line: start, character: 0 } }];
  const given: ShowPlacesArguments = [uri, position, places];
  return { range, command: { title, command: SHOW_PLACES, arguments: given } };
}

const COMPLETION_KINDS: Readonly<Record<Completion["kind"], CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword,
  name: CompletionItemKind.Reference,
  unit: CompletionItemKind.Unit,
  choice: CompletionItemKind.EnumMember,
  value: CompletionItemKind.Value,
  column: CompletionItemKind.Field,
  file: CompletionItemKind.File,
};

function toCompletion(item: Completion, index: number, line: number, snippets: boolean) {
  const snippet = snippets ? item.snippet : undefined;
  return {
    label: item.label,
    kind: COMPLETION_KINDS[item.kind],
    detail: item.detail,
    // The likely first, whatever the alphabet says.
    sortText: String(index).padStart(4, "0"),
    ...(item.documentation === undefined
      ? {}
      : { documentation: { kind: MarkupKind.Markdown, value: item.documentation } }),
    insertTextFormat: snippet === undefined ? InsertTextFormat.PlainText : InsertTextFormat.Snippet,
    textEdit: { range: toRange({ line, from: item.from, to: item.to }), newText: snippet ?? item.insert },
  };
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

/** Tokens as the protocol packs them: each counts from the one before. */
function tokenData(analysis: Analysis, first?: number, last?: number): number[] {
  const data: number[] = [];
  let line = 0;
  let column = 0;
  for (const token of semanticTokens(analysis.scope.file, first, last)) {
    const sameLine = token.line === line;
    const modifier = token.modifier === undefined ? 0 : 1 << TOKEN_MODIFIERS.indexOf(token.modifier);
    data.push(
      token.line - line,
      sameLine ? token.from - column : token.from,
      token.to - token.from,
      TOKEN_TYPES.indexOf(token.type),
      modifier,
    );
    line = token.line;
    column = token.from;
  }
  return data;
}
