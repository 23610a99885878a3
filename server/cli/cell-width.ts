// How many columns of a terminal a text takes, so that carets stand below what they mean.

const ASCII = /^[ -~]*$/;

/** Columns of a text without control characters; close, since terminals differ in what they do with emoji. */
export function cellWidth(text: string): number {
  if (ASCII.test(text)) return text.length;
  let width = 0;
  for (const { segment } of new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)) {
    width += graphemeWidth(segment);
  }
  return width;
}

/** The sets stand in here, since they take a hundredth of a short check to build and few checks need them. */
function graphemeWidth(grapheme: string): number {
  if (/^[\p{Mark}\p{Format}]+$/u.test(grapheme)) return 0;
  // Scripts and signs that East Asian typography sets on a full width (the wide classes of Unicode Standard Annex 11).
  const isWide =
    /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]|\uFE0F/u;
  return isWide.test(grapheme) && !/[\uFF61-\uFFDC]/.test(grapheme) ? 2 : 1;
}
