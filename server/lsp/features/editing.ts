// What changes the text: quick fixes, formatting, and the row that Enter begins.
import { type CodeAction, CodeActionKind, type Range } from "vscode-languageserver";
import { ON_ENTER, type OnEnterAnswer, onEnterParams } from "../../../shared/messages/requests.ts";
import { codeActions, findingsAt, mendAll, needsOthers } from "../../service/code-actions.ts";
import { formatEdits } from "../../service/format-edits.ts";
import { nextRow } from "../../service/on-enter.ts";
import { toDiagnostic, toRange, toTextEdit, toWorkspaceEdit } from "../to-protocol.ts";
import { pathOf } from "../uris.ts";
import { type Asked, type Document, type Place, toPosition } from "./asked.ts";

const FIX_ALL = "source.fixAll.headnote";

export function registerEditing({ connection, guard, read, analysed, others }: Asked): void {
  connection.onCodeAction(
    guard("code actions", [], async (params: Document & { range: Range; context: { only?: string[] } }) => {
      const checked = await read(params);
      if (checked === undefined) return [];
      const { analysis, findings } = checked;
      const { uri } = params.textDocument;
      const path = pathOf(uri);
      const only = params.context.only ?? [];
      const actions: CodeAction[] = [];
      // To mend a file whole is offered to who asks for it, and not at every light bulb.
      const mends = isAsked(FIX_ALL, only) ? mendAll(analysis, findings) : [];
      if (mends.length > 0) {
        const edit = toWorkspaceEdit(new Map([[path, mends]]));
        actions.push({ title: "Mend all that can be mended", kind: FIX_ALL, edit });
      }
      if (only.length > 0 && !isAsked(CodeActionKind.QuickFix, only)) return actions;
      const { start, end } = params.range;
      const here = findingsAt(findings, toPosition(start), toPosition(end));
      const offered = codeActions(analysis, findings, here, needsOthers(here) ? await others() : []);
      for (const { title, isPreferred, edits, mends: judged } of offered) {
        const edit = toWorkspaceEdit(new Map([[path, edits]]));
        const diagnostics = judged === undefined ? {} : { diagnostics: [toDiagnostic(path, judged)] };
        actions.push({ title, kind: CodeActionKind.QuickFix, isPreferred, edit, ...diagnostics });
      }
      return actions;
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

/** Who asks for a kind asks for all below it. */
function isAsked(kind: string, only: readonly string[]): boolean {
  return only.some((asked) => kind === asked || kind.startsWith(`${asked}.`));
}
