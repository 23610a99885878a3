// What changes the text: quick fixes, formatting, and the row that Enter begins.
import type { Range } from "vscode-languageserver";
import { ON_ENTER, type OnEnterAnswer, onEnterParams } from "../../../shared/messages/requests.ts";
import { codeActions, mendAll, needsOthers } from "../../service/code-actions.ts";
import type { Judged } from "../../service/findings.ts";
import { formatEdits } from "../../service/format-edits.ts";
import { nextRow } from "../../service/on-enter.ts";
import { toDiagnostic, toRange, toTextEdit, toWorkspaceEdit } from "../to-protocol.ts";
import { pathOf } from "../uris.ts";
import type { Asked, Document, Place } from "./asked.ts";

export function registerEditing({ connection, guard, read, analysed, others }: Asked): void {
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
      const [first, last] = [params.range.start.line, params.range.end.line];
      const around = needsOthers(findings, first, last) ? await others() : [];
      return codeActions(analysis, findings, first, last, around).map((action) => ({
        title: action.title,
        kind: "quickfix",
        isPreferred: action.isPreferred,
        edit: toWorkspaceEdit(new Map([[path, action.edits]])),
        ...diagnosticsOf(path, action.mends),
      }));
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
  connection.onRequest<OnEnterAnswer, void>(
    ON_ENTER,
    guard("Enter", null, async (params: unknown): Promise<OnEnterAnswer> => {
      const { uri, position } = onEnterParams.parse(params);
      const analysis = await analysed({ textDocument: { uri } });
      const text = analysis && nextRow(analysis, { line: position.line, column: position.character });
      return text === undefined ? null : { text };
    }),
  );
}

function diagnosticsOf(path: string, judged: Judged | undefined) {
  return judged === undefined ? {} : { diagnostics: [toDiagnostic(path, judged)] };
}
