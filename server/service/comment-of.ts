// Tells a comment from a line that only looks as if it had one: `#` may stand in words and texts.
import { lexLine } from "../../grammar/lexer.ts";
import { Comment } from "../../grammar/tokens.ts";

/** The comment of a line, from its `#` on; `undefined` where it has none. */
export function commentOf(text: string): string | undefined {
  if (!text.includes("#")) return undefined;
  const last = lexLine(text).at(-1);
  return last?.tokenType === Comment ? last.image : undefined;
}
