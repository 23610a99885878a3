// Cuts one line into tokens; the texts of the tokens joined together are the line again.
import { type IToken, Lexer } from "chevrotain";
import { tokenTypes } from "./tokens.ts";

const lexer = new Lexer(tokenTypes, {
  ensureOptimizations: true,
  positionTracking: "onlyOffset",
});

/** Tokens of one line (without its line end); offsets are columns. Never throws, never loses a character. */
export function lexLine(text: string): IToken[] {
  return lexer.tokenize(text).tokens;
}
