// What helps while a line is being written: completion, and the form of the line.
import { CompletionItemKind, InsertTextFormat, MarkupKind } from "vscode-languageserver";
import { type Completion, completion } from "../../service/completion.ts";
import { elsewhereOffers, soughtElsewhere } from "../../service/elsewhere-offers.ts";
import { signatureHelp } from "../../service/signature-help.ts";
import { toRange, toTextEdit } from "../to-protocol.ts";
import { type Asked, at, type Place } from "./asked.ts";

export function registerCompleting({
  connection,
  guard,
  analysed,
  read,
  others,
  logs,
  logText,
  capabilities,
  runtime,
  list,
}: Asked): void {
  connection.onCompletion(
    guard("completion", [], async (params: Place & { context?: { triggerCharacter?: string } }) => {
      const checked = await read(params);
      if (checked === undefined) return [];
      const { analysis } = checked;
      const findings = () => checked.findings;
      const text = analysis.scope.file.outline.lines[params.position.line]?.text ?? "";
      const named = /^\s*log\s+"([^"]*)/.exec(text)?.[1];
      const paths = text.includes("include") ? await list() : named === undefined ? [] : await logs();
      const log = named === undefined ? undefined : await logText(analysis.scope.file.path, named);
      const trigger = params.context?.triggerCharacter;
      const own = completion(analysis, at(params), { now: runtime.now(), paths, log, findings, trigger });
      const sought = own.length === 0 ? soughtElsewhere(analysis, at(params)) : undefined;
      const items = sought === undefined ? own : elsewhereOffers(analysis, sought, await others());
      const { line } = params.position;
      return items.map((item, index) => toCompletion(item, index, line, capabilities.snippets));
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
    ...(item.edits !== undefined && { additionalTextEdits: item.edits.map(toTextEdit) }),
    insertTextFormat: snippet === undefined ? InsertTextFormat.PlainText : InsertTextFormat.Snippet,
    textEdit: { range: toRange({ line, from: item.from, to: item.to }), newText: snippet ?? item.insert },
  };
}
