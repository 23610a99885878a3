// Colours by meaning, packed as the protocol wants them; after an edit only those near to it are sent.
import type { Range, SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import { difference } from "../../../shared/difference.ts";
import {
  type SemanticToken,
  semanticTokens,
  TOKEN_MODIFIERS,
  TOKEN_TYPES,
} from "../../service/semantic-tokens.ts";
import type { Asked, Document } from "./asked.ts";

type Lines = readonly (readonly SemanticToken[])[];

/** What was last sent, which the next answer may build on. */
interface Sent {
  readonly uri: string;
  readonly resultId: string;
  readonly lines: Lines;
}

/** How many numbers a token is packed into. */
const NUMBERS = 5;

export function registerColouring({ connection, guard, analysed }: Asked): void {
  let sent: Sent | undefined;
  let count = 0;
  const linesOf = async (params: Document, first?: number, last?: number): Promise<Lines> => {
    const analysis = await analysed(params);
    return analysis === undefined ? [] : semanticTokens(analysis.scope.file, first, last);
  };
  const send = (uri: string, lines: Lines): string => {
    const resultId = String(++count);
    sent = { uri, resultId, lines };
    return resultId;
  };
  connection.languages.semanticTokens.on(
    guard("semantic tokens", { data: [] }, async (params: Document): Promise<SemanticTokens> => {
      const lines = await linesOf(params);
      return { resultId: send(params.textDocument.uri, lines), data: packed(lines, 0) };
    }),
  );
  connection.languages.semanticTokens.onDelta(
    guard(
      "semantic tokens",
      { data: [] },
      async (
        params: Document & { previousResultId: string },
      ): Promise<SemanticTokens | SemanticTokensDelta> => {
        const { uri } = params.textDocument;
        const lines = await linesOf(params);
        const before = sent?.uri === uri && sent.resultId === params.previousResultId ? sent : undefined;
        const resultId = send(uri, lines);
        return before === undefined
          ? { resultId, data: packed(lines, 0) }
          : { resultId, edits: [edit(lines, before.lines)] };
      },
    ),
  );
  connection.languages.semanticTokens.onRange(
    guard("semantic tokens", { data: [] }, async (params: Document & { range: Range }) => {
      const { start, end } = params.range;
      return { data: packed(await linesOf(params, start.line, end.line), start.line) };
    }),
  );
}

/** Each token counts from the one before; `line` is where the first line stands behind the last token before it. */
function packed(lines: Lines, line: number): number[] {
  const data: number[] = [];
  let below = line;
  for (const tokens of lines) {
    let column = 0;
    for (const { from, to, type, modifier } of tokens) {
      const modifiers = modifier === undefined ? 0 : 1 << TOKEN_MODIFIERS.indexOf(modifier);
      data.push(below, from - column, to - from, TOKEN_TYPES.indexOf(type), modifiers);
      below = 0;
      column = from;
    }
    below++;
  }
  return data;
}

/** What makes the numbers of some lines of those that were sent before. */
function edit(now: Lines, then: Lines) {
  const { before, after } = difference(now, then);
  // The first token behind the change counts from the last one before it.
  let end = now.length - after;
  while (end < now.length && now[end]?.length === 0) end++;
  end = Math.min(end + 1, now.length);
  const last = now.slice(0, before).findLastIndex((tokens) => tokens.length > 0);
  return {
    start: NUMBERS * counted(now.slice(0, before)),
    deleteCount: NUMBERS * counted(then.slice(before, then.length - (now.length - end))),
    data: packed(now.slice(before, end), before - Math.max(0, last)),
  };
}

function counted(lines: Lines): number {
  return lines.reduce((sum, { length }) => sum + length, 0);
}
