// Colours by meaning: what a word is in its line, and what is void.
import { bind } from "../../grammar/bind.ts";
import { blockIndexAt } from "../../grammar/block-at.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { lexLine } from "../../grammar/lexer.ts";
import { Comment, Text, UnclosedText } from "../../grammar/tokens.ts";
import type { DirectiveLine, Line } from "../../grammar/tree.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import type { SourceFile } from "../analysis/source-file.ts";

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

/** A word of a line, from and to a column of it. */
export interface SemanticToken {
  readonly from: number;
  readonly to: number;
  readonly type: (typeof TOKEN_TYPES)[number];
  readonly modifier?: (typeof TOKEN_MODIFIERS)[number];
}

/** The tokens of each of some lines, in order; no two overlap. A line that is not edited keeps its list. */
export function semanticTokens(
  { outline }: SourceFile,
  first = 0,
  last = outline.lines.length - 1,
): readonly (readonly SemanticToken[])[] {
  const { lines, blocks } = outline;
  const from = Math.max(0, first);
  let index = blockIndexAt(blocks, from);
  return lines.slice(from, last + 1).map((own, at) => {
    const line = from + at;
    if (blocks[index + 1]?.start === line) index++;
    const placed = blocks[index];
    const inBlock = placed?.block.lines[line - placed.start];
    const node = inBlock?.kind === "row" ? inBlock : own;
    return remembered(node, placed?.start === line, placed?.block.entity.kind);
  });
}

type BlockWord = Parameters<typeof findProperty>[0];

/** The tokens of a line by what it is in its block; lines that read alike share their node, wherever they stand. */
const known = new WeakMap<Line, Map<BlockWord | "heading" | undefined, readonly SemanticToken[]>>();

function remembered(line: Line, isHeading: boolean, block: BlockWord | undefined): readonly SemanticToken[] {
  const role = line.kind !== "directive" ? undefined : isHeading ? "heading" : block;
  const before = known.get(line);
  const found = before?.get(role);
  if (found !== undefined) return found;
  const tokens = tokensOf(line, isHeading, block).sort((a, b) => a.from - b.from);
  if (before === undefined) known.set(line, new Map([[role, tokens]]));
  else before.set(role, tokens);
  return tokens;
}

function tokensOf(line: Line, isHeading: boolean, block: BlockWord | undefined): SemanticToken[] {
  const plain = texts(line.text);
  switch (line.kind) {
    case "directive":
      return [...plain, ...directive(line, isHeading, block)];
    case "columns":
      return line.heads.flatMap(({ name, unit }): SemanticToken[] => [
        { from: name.from, to: name.to, type: "property" },
        ...(unit === undefined || unit.from === unit.to
          ? []
          : [{ from: unit.from, to: unit.to, type: "type" as const }]),
      ]);
    case "row": {
      const type = (value: number, text: string) =>
        Number.isNaN(value) && text !== "-" ? "enumMember" : "number";
      const cells = cellsOf(line).map(
        ({ from, to, value, text }): SemanticToken => ({
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
function texts(text: string): SemanticToken[] {
  if (!/["#]/.test(text)) return [];
  return lexLine(text).flatMap(({ tokenType, startOffset, image }): SemanticToken[] => {
    const place = { from: startOffset, to: startOffset + image.length };
    if (tokenType === Comment) return [{ ...place, type: "comment" }];
    return tokenType === Text || tokenType === UnclosedText ? [{ ...place, type: "string" }] : [];
  });
}

function directive(line: DirectiveLine, isHeading: boolean, block: BlockWord | undefined): SemanticToken[] {
  const { keyword, atoms } = line;
  const form = isHeading ? findHeading(keyword.text) : block && findProperty(block, keyword.text);
  const own: SemanticToken[] = [{ from: keyword.from, to: keyword.to, type: "keyword" }];
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
