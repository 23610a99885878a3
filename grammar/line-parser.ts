// Turns one line into its node. The grammar is total: every line has a node, and what has no place in it is reported.
import { EmbeddedActionsParser, type IToken } from "chevrotain";
import { type Finding, raise } from "../shared/finding.ts";
import type { Cell } from "../shared/model/model.ts";
import { readCell } from "./cell.ts";
import { conflictMarker } from "./findings/conflict-marker.ts";
import { unclosedText } from "./findings/unclosed-text.ts";
import { unreadText } from "./findings/unread-text.ts";
import { lexLine } from "./lexer.ts";
import { isConflictMark, lineKind } from "./line-kind.ts";
import {
  CellWord,
  Comment,
  LeftBracket,
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
    const cells: Cell[] = [];
    const said: { remark?: string; void?: string } = {};
    let to = 0;
    this.MANY(() => {
      this.OR([
        {
          ALT: () => {
            const token = this.CONSUME(CellWord);
            to = endOf(token);
            this.ACTION(() => this.cell(token, cells, said.remark ?? said.void));
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(Void);
            to = endOf(token);
            const again = said.void !== undefined;
            this.ACTION(() => again && this.reported.push(unread(token)));
            said.void ??= "";
            this.OPTION(() => {
              const why = this.SUBRULE(this.text);
              to = why.to;
              if (!again) said.void = why.text;
              else this.ACTION(() => this.reported.push(unread(why.token)));
            });
          },
        },
        {
          ALT: () => {
            const remark = this.SUBRULE1(this.text);
            to = remark.to;
            if (said.remark === undefined) said.remark = remark.text;
            else this.ACTION(() => this.reported.push(unread(remark.token)));
          },
        },
        { ALT: () => this.SUBRULE(this.stray) },
        { ALT: () => this.report(this.CONSUME(LeftBracket)) },
      ]);
    });
    return { kind: "row", cells, to, ...said };
  });

  private readonly unit = this.RULE("unit", (): Atom => {
    const left = this.CONSUME(LeftBracket);
    const words: Atom[] = [];
    this.MANY(() => words.push(wordAtom(this.CONSUME(Word))));
    this.OPTION(() => this.CONSUME(RightBracket));
    const first = words[0];
    const last = words.at(-1);
    const empty = { kind: "word", text: "", from: endOf(left), to: endOf(left) } as const;
    return first === undefined || last === undefined
      ? empty
      : { kind: "word", text: words.map((word) => word.text).join(" "), from: first.from, to: last.to };
  });

  private readonly text = this.RULE("text", (): Atom => {
    const token = this.CONSUME(Text);
    return this.ACTION(() => {
      if (token.tokenType === UnclosedText) this.reported.push(unclosed(token));
      return textAtom(token);
    });
  });

  private readonly stray = this.RULE("stray", () => this.report(this.CONSUME(Stray)));

  private report(token: IToken): void {
    this.ACTION(() => this.reported.push(unread(token)));
  }

  private cell(token: IToken, cells: Cell[], after: string | undefined): void {
    if (after !== undefined) this.reported.push(unread(token));
    else cells.push(readCell(token, this.reported));
  }
}

let parser: LineParser | undefined;

/** The node of one line, given without its line end. Never throws; what cannot be read is in `findings`. */
export function parseLine(text: string): Line {
  if (isConflictMark(text)) {
    return { kind: "conflict", text, findings: [raise(conflictMarker, whole(text), {})] };
  }
  const words = lexLine(text).filter(isSpoken);
  return parseWords(text, words, lineKind(words));
}

/**
 * The node of a line that is known to be a row, whatever its first word: where the first column is a choice, or where a
 * misread first number stands among the readings.
 */
export function parseRow(text: string): RowLine {
  const line = parseWords(text, lexLine(text).filter(isSpoken), "row");
  return line.kind === "row" ? line : { kind: "row", text, findings: [], cells: [], to: 0 };
}

function parseWords(text: string, words: IToken[], kind: Line["kind"]): Line {
  if (kind === "blank" || kind === "conflict") return { kind: "blank", text, findings: [] };
  parser ??= new LineParser();
  parser.input = words;
  parser.reported = [];
  const read = parser[kind]();
  return { ...read, text, findings: parser.reported };
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

function unread(token: IToken): Finding {
  const span = { line: 0, from: token.startOffset, to: endOf(token) };
  return raise(unreadText, span, { text: token.image });
}
