// How many columns of a terminal a text takes, so that carets stand below what they mean.

/** Scripts and signs that East Asian typography sets on a full width (the wide classes of Unicode Standard Annex 11). */
const WIDE =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]|\uFE0F/u;
const HALF_WIDTH = /[\uFF61-\uFFDC]/;
const NOTHING_BUT_MARKS = /^[\p{Mark}\p{Format}]+$/u;
const ASCII = /^[ -~]*$/;

/** Columns of a text without control characters; close, since terminals differ in what they do with emoji. */
export function cellWidth(text: string): number {
  if (ASCII.test(text)) return text.length;
  let width = 0;
  for (const { segment } of new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)) {
    if (NOTHING_BUT_MARKS.test(segment)) continue;
    width += WIDE.test(segment) && !HALF_WIDTH.test(segment) ? 2 : 1;
  }
  return width;
}
