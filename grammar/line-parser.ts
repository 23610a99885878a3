// Turns one line into its node. The grammar is total: every line has a node, and what has no place in it is reported.
import { EmbeddedActionsParser, EOF, type IToken, tokenMatcher } from "chevrotain";
import { type Finding, raise } from "../shared/finding.ts";
import { readNumber } from "../shared/quantity/number.ts";
import { findHeading, isKeyword } from "./directives/index.ts";
import { conflictMarker } from "./findings/conflict-marker.ts";
import { unclosedBracket } from "./findings/unclosed-bracket.ts";
import { unclosedText } from "./findings/unclosed-text.ts";
import { unreadText } from "./findings/unread-text.ts";
import { lexLine } from "./lexer.ts";
import { isConflictMark, isOwnKeyword, lineKind } from "./line-kind.ts";
import { plainDirective } from "./plain-directive.ts";
import { plainRow } from "./plain-row.ts";
import {
  CellWord,
  Comment,
  InchMark,
  LeftBracket,
  Other,
  RightBracket,
  Stray,
  Text,
  tokenTypes,
  UnclosedText,
  Void,
  WhiteSpace,
  Word,
} from "./tokens.ts";
import type { Atom, ColumnHead, ColumnsLine, DirectiveLine, Line, RowLine } from "./tree.ts";

type Read<T> = Omit<T, "text" | "findings">;
/** What stands behind the cells of a row. */
type Behind = Pick<RowLine, "to" | "remark" | "void">;

class LineParser extends EmbeddedActionsParser {
  /** What the line that is being parsed has reported so far. */
  reported: Finding[] = [];

  constructor() {
    super(tokenTypes, { recoveryEnabled: false, maxLookahead: 1 });
    this.performSelfAnalysis();
  }

  // directive = word { word | text }
  readonly directive = this.RULE("directive", (): Read<DirectiveLine> => {
    const keyword = wordAtom(this.CONSUME(Word));
    const atoms: Atom[] = [];
    this.MANY(() => {
      this.OR([
        { ALT: () => atoms.push(wordAtom(this.CONSUME1(Word))) },
        { ALT: () => atoms.push(this.SUBRULE(this.text)) },
        { ALT: () => this.SUBRULE(this.stray) },
        { ALT: () => this.report(this.CONSUME(LeftBracket)) },
      ]);
    });
    return { kind: "directive", keyword, atoms };
  });

  // columns = { name [ "[" unit "]" ] }
  readonly columns = this.RULE("columns", (): Read<ColumnsLine> => {
    const heads: ColumnHead[] = [];
    this.MANY(() => {
      this.OR([
        {
          ALT: () => {
            const name = wordAtom(this.CONSUME(Word));
            const unit = this.OPTION(() => this.SUBRULE(this.unit));
            heads.push(unit === undefined ? { name } : { name, unit });
          },
        },
        { ALT: () => this.report(this.CONSUME(Text)) },
        { ALT: () => this.SUBRULE(this.stray) },
        { ALT: () => this.report(this.CONSUME(LeftBracket)) },
      ]);
    });
    return { kind: "columns", heads };
  });

  // row = cell { cell } [ text ] [ "void" [ text ] ], the last two in either order
  readonly row = this.RULE("row", (): Read<RowLine> => {
    const words: IToken[] = [];
    // Nearly every row ends with its cells, so that this is the path that has to be short.
    this.MANY(() => words.push(this.CONSUME(CellWord)));
    const behind = this.OPTION(() => this.SUBRULE(this.behindCells, { ARGS: [words] }));
    return this.ACTION(() => {
      const last = words.at(-1);
      const to = behind?.to ?? (last === undefined ? 0 : endOf(last));
      const values = words.map(cellValue);
      const bounds = words.flatMap((token) => [token.startOffset, endOf(token)]);
      return { kind: "row", values, bounds, to, remark: behind?.remark, void: behind?.void };
    });
  });

  // what stands behind the cells of a row
  private readonly behindCells = this.RULE("behindCells", (words: IToken[]): Behind => {
    const said: { remark: string | undefined; void: string | undefined } = {
      remark: undefined,
      void: undefined,
    };
    let to = 0;
    this.AT_LEAST_ONE(() => {
      this.OR([
        {
          ALT: () => {
            const token = this.CONSUME(Void);
            to = endOf(token);
            const again = said.void !== undefined;
            if (again) this.report(token);
            said.void ??= "";
            this.OPTION(() => {
              const why = this.SUBRULE(this.text);
              to = why.to;
              if (again) this.reportAtom(why);
              else said.void = why.text;
            });
          },
        },
        {
          ALT: () => {
            const remark = this.SUBRULE1(this.text);
            to = remark.to;
            if (said.remark === undefined) said.remark = remark.text;
            else this.reportAtom(remark);
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(CellWord);
            to = endOf(token);
            // Behind a stray character the cells go on; behind a remark they cannot.
            if (said.remark === undefined && said.void === undefined) this.ACTION(() => words.push(token));
            else this.report(token);
          },
        },
        { ALT: () => this.SUBRULE(this.stray) },
        { ALT: () => this.report(this.CONSUME(LeftBracket)) },
      ]);
    });
    return { to, ...said };
  });

  private readonly unit = this.RULE("unit", (): Atom => {
    const left = this.CONSUME(LeftBracket);
    const closed = this.ACTION(() => this.closes());
    const words: Atom[] = [];
    this.MANY({
      // Of what follows an open bracket only the first word is its unit; the others are heads of their own.
      GATE: () => closed || words.length === 0,
      DEF: () => {
        this.OR([
          { ALT: () => words.push(wordAtom(this.CONSUME(Word))) },
          { ALT: () => this.report(this.CONSUME(Text)) },
          { ALT: () => this.report(this.CONSUME(Other)) },
        ]);
      },
    });
    this.OPTION(() => this.CONSUME(RightBracket));
    const from = words[0]?.from ?? endOf(left);
    const to = words.at(-1)?.to ?? endOf(left);
    const text = words.map((word) => word.text).join(" ");
    if (!closed) this.ACTION(() => this.reported.push(unclosedAt(to, left, text)));
    return { kind: "word", text, from, to };
  });

  private readonly text = this.RULE("text", (): Atom => {
    const token = this.CONSUME(Text);
    return this.ACTION(() => {
      if (token.tokenType === UnclosedText) this.reported.push(unclosed(token));
      return textAtom(token);
    });
  });

  private readonly stray = this.RULE("stray", () => this.report(this.CONSUME(Stray)));

  /** Whether a right bracket comes before the next left one. */
  private closes(): boolean {
    for (let ahead = 1; ; ahead++) {
      const { tokenType } = this.LA(ahead);
      if (tokenType === RightBracket) return true;
      if (tokenType === LeftBracket || tokenType === EOF) return false;
    }
  }

  private report(token: IToken): void {
    this.ACTION(() => this.reported.push(unread(token)));
  }

  private reportAtom({ text, from, to }: Atom): void {
    this.ACTION(() => this.reported.push(raise(unreadText, { line: 0, from, to }, { text })));
  }
}

let parser: LineParser | undefined;
const NOTHING: readonly Finding[] = [];

/** The node of one line, given without its line end. Never throws; what cannot be read is in `findings`. */
export function parseLine(text: string): Line {
  return plainRow(text) ?? known.get(text) ?? remembered(plainDirective(text) ?? parseSpoken(text));
}

/**
 * Nodes say nothing of where they stand, so that the lines which all records share (heads of columns, conditions, blank
 * ones) are parsed once. Headings keep nodes of their own: a block is known by the node of its heading.
 */
const known = new Map<string, Line>();
const MOST_KNOWN = 10_000;
const LONGEST_KNOWN = 200;

/** Neither a heading nor anything that could be a misspelt one. */
function isPropertyLine(line: Line): boolean {
  if (line.kind !== "directive") return false;
  const keyword = line.keyword.text;
  return findHeading(keyword) === undefined && isKeyword(keyword);
}

function remembered(line: Line): Line {
  const isShared = line.kind === "columns" || line.kind === "blank" || isPropertyLine(line);
  if (!isShared || line.text.length > LONGEST_KNOWN) return line;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(line.text, line);
  return line;
}

/** Nothing, or only a comment: told without cutting the line into tokens. */
const BLANK = /^\s*(?:#|$)/;

/** The node of a line by the lexer and the parser, whatever it is. */
export function parseSpoken(text: string): Line {
  if (BLANK.test(text)) return { kind: "blank", text, findings: NOTHING };
  if (isConflictMark(text)) {
    return { kind: "conflict", text, findings: [raise(conflictMarker, whole(text), {})] };
  }
  const spoken = lexLine(text).filter(isSpoken);
  const first = spoken.findIndex((token) => tokenMatcher(token, Word));
  const before = first < 0 ? spoken : spoken.slice(0, first);
  const words = before.length === 0 ? spoken : spoken.slice(before.length);
  const line = parseWords(text, words, lineKind(words));
  if (line.kind === "directive" && isOwnKeyword(line.keyword.text)) return { ...line, findings: [] };
  return before.length === 0 ? line : { ...line, findings: [...before.map(unread), ...line.findings] };
}

/**
 * The node of a line that is known to be a row, whatever its first word: where the first column is a choice, or where a
 * misread first number stands among the readings.
 */
export function parseRow(text: string): RowLine {
  const line = parseWords(text, lexLine(text).filter(isSpoken), "row");
  if (line.kind === "row") return line;
  return {
    kind: "row",
    text,
    findings: [],
    values: [],
    bounds: [],
    to: 0,
    remark: undefined,
    void: undefined,
  };
}

function parseWords(text: string, words: IToken[], kind: ReturnType<typeof lineKind>): Line {
  if (kind === "blank") return { kind, text, findings: [] };
  parser ??= new LineParser();
  parser.input = kind === "row" ? joinInchMarks(words) : words;
  parser.reported = [];
  const read = parser[kind]();
  return Object.assign(read, { text, findings: parser.reported.length === 0 ? NOTHING : parser.reported });
}

/** In a row a number and its inch mark are one cell, like any number with a unit behind it. */
export function joinInchMarks(words: IToken[]): IToken[] {
  if (!words.some((token) => token.tokenType === InchMark)) return words;
  const joined: IToken[] = [];
  for (const token of words) {
    const last = joined.at(-1);
    if (token.tokenType === InchMark && last !== undefined && endOf(last) === token.startOffset) {
      joined[joined.length - 1] = { ...last, image: last.image + token.image };
    } else joined.push(token);
  }
  return joined;
}

function isSpoken(token: IToken): boolean {
  return token.tokenType !== WhiteSpace && token.tokenType !== Comment;
}

function wordAtom(token: IToken): Atom {
  return { kind: "word", text: token.image, from: token.startOffset, to: endOf(token) };
}

function textAtom(token: IToken): Atom {
  const closed = token.tokenType === UnclosedText ? token.image.length : token.image.length - 1;
  const text = token.image.slice(1, closed).replace(/\\(["\\])/g, "$1");
  return { kind: "text", text, from: token.startOffset, to: endOf(token) };
}

/** A cell's number; NaN for what is none: it may be a choice, or `-`. */
function cellValue(token: IToken): number {
  const read = readNumber(token.image);
  return "value" in read ? read.value : Number.NaN;
}

function endOf(token: IToken): number {
  return token.startOffset + token.image.length;
}

function whole(text: string): { line: number; from: number; to: number } {
  return { line: 0, from: 0, to: text.length };
}

function unclosed(token: IToken): Finding {
  const end = { line: 0, from: endOf(token), to: endOf(token) };
  const fix = { title: "Close the text", edits: [{ span: end, text: '"' }] };
  return raise(unclosedText, { line: 0, from: token.startOffset, to: endOf(token) }, {}, { fix });
}

function unclosedAt(to: number, left: IToken, unit: string): Finding {
  const end = { line: 0, from: to, to };
  const fix = { title: "Close the bracket", edits: [{ span: end, text: "]" }] };
  return raise(unclosedBracket, { line: 0, from: left.startOffset, to }, { unit }, { fix });
}

function unread(token: IToken): Finding {
  const span = { line: 0, from: token.startOffset, to: endOf(token) };
  return raise(unreadText, span, { text: token.image });
}
