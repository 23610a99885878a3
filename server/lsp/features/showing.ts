// What is shown of a text as it stands: hover, hints behind rows, lenses above runs.
import { MarkupKind, type Range } from "vscode-languageserver";
import { SHOW_CURVE, SHOW_PLACES, type ShowPlacesArguments } from "../../../shared/messages/requests.ts";
import type { RunResult } from "../../../shared/model/result.ts";
import { codeLenses, type Lens } from "../../service/code-lens.ts";
import { hover } from "../../service/hover.ts";
import { inlayHints } from "../../service/inlay-hints.ts";
import { toRange } from "../to-protocol.ts";
import { uriOf } from "../uris.ts";
import { type Asked, at, type Document, type Place } from "./asked.ts";

export function registerShowing({
  connection,
  guard,
  analysed,
  baselinesFor,
  capabilities,
  settings,
}: Asked): void {
  connection.onHover(
    guard("hover", null, async (params: Place) => {
      const analysis = await analysed(params);
      const found = analysis && hover(analysis, at(params));
      return found === undefined
        ? null
        : { contents: { kind: MarkupKind.Markdown, value: found.text }, range: toRange(found.span) };
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
        ({ line, column, label, meaning }) => ({
          position: { line, character: column },
          label,
          tooltip: meaning,
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
}

function toCodeLens(uri: string, lens: Lens) {
  const { title } = lens;
  const position = { line: lens.line, character: 0 };
  const range = { start: position, end: position };
  if (lens.kind === "curve")
    return { range, command: { title, command: SHOW_CURVE, arguments: [uri, lens.run] } };
  if (lens.kind === "picture")
    return { range, command: { title, command: SHOW_CURVE, arguments: [uri, null, lens.block] } };
  const { path, start } = lens.baseline;
  const places = [{ uri: uriOf(path), position: { line: start, character: 0 } }];
  const given: ShowPlacesArguments = [uri, position, places];
  return { range, command: { title, command: SHOW_PLACES, arguments: given } };
}
