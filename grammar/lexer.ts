// Cuts one line into tokens; the texts of the tokens joined together are the line again.
import { type IToken, Lexer } from "chevrotain";
import { tokenTypes } from "./tokens.ts";

/** Made when the first line asks for it: plain lines do without, and making it takes longer than reading a record. */
let lexer: Lexer | undefined;

/** Tokens of one line (without its line end); offsets are columns. Never throws, never loses a character. */
export function lexLine(text: string): IToken[] {
  lexer ??= new Lexer(tokenTypes, { ensureOptimizations: true, positionTracking: "onlyOffset" });
  return lexer.tokenize(text).tokens;
}
