// Measures, cleans and breaks the texts of a picture where no font is at hand: the same way on every machine.

/** Advance widths of U+0020 to U+007E in DejaVu Sans 2.37, in thousandths of the font size; most fonts run narrower. */
const WIDTHS: readonly number[] = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
  636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295,
  295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838,
  500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
  392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];
const FIRST = 0x20;
/** Letters beyond ASCII up to here are taken as wide ones of an alphabet, all later ones as full squares. */
const LAST_OF_ALPHABETS = 0x1fff;
const ALPHABET_WIDTH = 800;
const SQUARE_WIDTH = 1050;
/** Bold over regular in the same font, over all of ASCII, with a little to spare. */
const BOLD = 1.13;

/** A space at which no line breaks. */
export const HARD_SPACE = "\u00a0";
const ELLIPSIS = "…";
/** More is never shown, and never measured. */
const LONGEST_TEXT = 400;

/** Width of a text of one line, in the unit of `size`; beyond ASCII an estimate on the wide side. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of text) {
    const code = letter === HARD_SPACE ? FIRST : (letter.codePointAt(0) ?? 0);
    sum += WIDTHS[code - FIRST] ?? (code <= LAST_OF_ALPHABETS ? ALPHABET_WIDTH : SQUARE_WIDTH);
  }
  return (sum / 1000) * size * (bold ? BOLD : 1);
}

/**
 * A record's text as a picture may hold it: on one line, at most 400 characters, without control and direction
 * characters, lone surrogates and non-characters, none of which XML or a reader can do with.
 */
export function cleanText(text: string): string {
  const clean = text
    .slice(0, 4 * LONGEST_TEXT)
    .replace(/[\p{Cc}\u2028\u2029]+/gu, " ")
    .replace(/[\p{Cs}\p{Noncharacter_Code_Point}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, "")
    .trim();
  const letters = [...clean];
  if (letters.length <= LONGEST_TEXT && text.length <= 4 * LONGEST_TEXT) return clean;
  return `${letters
    .slice(0, LONGEST_TEXT - 1)
    .join("")
    .trimEnd()}${ELLIPSIS}`;
}

/** The text, or as much of its beginning as fits into the width, with an ellipsis. */
export function clipText(text: string, width: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= width) return text;
  const letters = [...text];
  while (letters.length > 0) {
    letters.pop();
    const clipped = `${letters.join("").trimEnd()}${ELLIPSIS}`;
    if (textWidth(clipped, size, bold) <= width) return clipped;
  }
  return ELLIPSIS;
}

/** The text broken between words into lines that fit, at a hard space only where it must be; what does not fit into the last allowed line is clipped. */
export function wrapText(text: string, width: number, size: number, most: number, bold = false): string[] {
  const lines: string[] = [];
  let line = "";
  const words = text
    .split(" ")
    .flatMap((word) => (textWidth(word, size, bold) <= width ? word : word.split(HARD_SPACE)))
    .filter((word) => word !== "");
  for (const [index, word] of words.entries()) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line === "" || textWidth(longer, size, bold) <= width) {
      line = longer;
    } else if (lines.length === most - 1) {
      line = `${line} ${words.slice(index).join(" ")}`;
      break;
    } else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== "") lines.push(line);
  return lines.map((entry) => clipText(entry, width, size, bold));
}
