// Colours by meaning: what a word is in its line, and what is void.
import { bind } from "../../grammar/bind.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { lexLine } from "../../grammar/lexer.ts";
import { Comment, Text, UnclosedText } from "../../grammar/tokens.ts";
import type { DirectiveLine, Line } from "../../grammar/tree.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import type { SourceFile } from "../analysis/source-file.ts";
import { blockAt, lineAt } from "./line-at.ts";

export const TOKEN_TYPES = [
  "keyword",
  "class",
  "variable",
  "property",
  "number",
  "type",
  "string",
  "comment",
  "enumMember",
] as const;

export const TOKEN_MODIFIERS = ["declaration", "deprecated"] as const;

export interface SemanticToken {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly type: (typeof TOKEN_TYPES)[number];
  readonly modifier?: (typeof TOKEN_MODIFIERS)[number];
}

/** The tokens of some lines, in order; no two overlap. */
export function semanticTokens(
  { outline }: SourceFile,
  first = 0,
  last = outline.lines.length - 1,
): readonly SemanticToken[] {
  const tokens: SemanticToken[] = [];
  for (let line = Math.max(0, first); line <= Math.min(last, outline.lines.length - 1); line++) {
    const node = lineAt(outline, line);
    if (node === undefined) continue;
    const block = blockAt(outline, line);
    const own = tokensOf(node, block !== undefined && block.start === line, block?.block.entity.kind);
    for (const token of own.sort((a, b) => a.from - b.from)) tokens.push({ ...token, line });
  }
  return tokens;
}

type Own = Omit<SemanticToken, "line">;

function tokensOf(
  line: Line,
  isHeading: boolean,
  block: Parameters<typeof findProperty>[0] | undefined,
): Own[] {
  const plain = texts(line.text);
  switch (line.kind) {
    case "directive":
      return [...plain, ...directive(line, isHeading, block)];
    case "columns":
      return line.heads.flatMap(({ name, unit }): Own[] => [
        { from: name.from, to: name.to, type: "property" },
        ...(unit === undefined || unit.from === unit.to
          ? []
          : [{ from: unit.from, to: unit.to, type: "type" as const }]),
      ]);
    case "row": {
      const type = (value: number, text: string) =>
        Number.isNaN(value) && text !== "-" ? "enumMember" : "number";
      const cells = cellsOf(line).map(
        ({ from, to, value, text }): Own => ({
          from,
          to,
          type: type(value, text),
          ...(line.void !== undefined && { modifier: "deprecated" }),
        }),
      );
      const at = line.void === undefined ? -1 : line.text.search(/(?<!\S)void(?!\S)/);
      return [...plain, ...cells, ...(at < 0 ? [] : [{ from: at, to: at + 4, type: "keyword" as const }])];
    }
    default:
      return plain;
  }
}

/** Texts and comments of any line. */
function texts(text: string): Own[] {
  if (!/["#]/.test(text)) return [];
  return lexLine(text).flatMap(({ tokenType, startOffset, image }): Own[] => {
    const place = { from: startOffset, to: startOffset + image.length };
    if (tokenType === Comment) return [{ ...place, type: "comment" }];
    return tokenType === Text || tokenType === UnclosedText ? [{ ...place, type: "string" }] : [];
  });
}

function directive(
  line: DirectiveLine,
  isHeading: boolean,
  block: Parameters<typeof findProperty>[0] | undefined,
): Own[] {
  const { keyword, atoms } = line;
  const form = isHeading ? findHeading(keyword.text) : block && findProperty(block, keyword.text);
  const own: Own[] = [{ from: keyword.from, to: keyword.to, type: "keyword" }];
  const words = atoms.filter((atom) => atom.kind === "word");
  const places = form === undefined ? [] : Object.entries(bind(form, line).places);
  for (const atom of words) {
    const slot = places.find(([, place]) => atom.from >= place.from && atom.to <= place.to)?.[0];
    const type = slot === undefined ? undefined : form?.slots[slot]?.type;
    own.push({ from: atom.from, to: atom.to, ...typeOf(atom.text, type?.kind) });
  }
  return own;
}

function typeOf(text: string, slot: string | undefined): Pick<SemanticToken, "type" | "modifier"> {
  switch (slot) {
    case "name":
      return { type: "class", modifier: "declaration" };
    case "reference":
      return { type: "class" };
    case "choice":
      return { type: "enumMember" };
    case "label":
      return { type: "variable" };
    case undefined:
      return { type: "property" };
    default:
      return {
        type: /^[-+.]?\p{Nd}/u.test(text)
          ? "number"
          : slot === "air" && !/^[%°A-Za-z"]{1,6}$/.test(text)
            ? "enumMember"
            : "type",
      };
  }
}
