// The first page of the reference, and its last: what a porter must know of the format before any list.
import { fence } from "./markdown.ts";

/** A whole record, small enough for the first page. Nothing is to be found in it. */
export const FIRST_RECORD = `headnote 1

bench garage "four-motor bench"
  shows      flow
  repeat     0.4 %

port b7-intake
  side       intake
  valve      46.0 mm
  seat       45 deg width 1.5 mm
  throat     40.0 mm
  stem       7.0 mm

session 2026-02-14 "as it came"
  bench      garage
  port       b7-intake
  target     28 inH2O
  air        21.0 degC 1004 hPa 38 %RH
  leak       1.1 cfm at 28 inH2O
  entry      clay

run b7-as-cast
  stage      "as cast"

  lift[mm]  depression[inH2O]  flow[cfm]
       2.0               28.0       38.2
       4.0               28.0       79.6  "valve chattered"
       6.0               26.1      108.0  void "motor tripped"
       6.0               28.0      113.4
       8.0               28.0      134.9
`;

const PAGES = `# Headnote reference

Headnote keeps flow-bench sessions as plain text. This page is the whole format. Everything behind it is lists.

Contents: [blocks](#blocks) · [columns](#columns) · [units](#units) · [reference airs](#airs) · [results](#results) ·
[settings](#settings) · [findings](#findings) · [what will not change](#stability)

## The format on one page`;

const RULES = `**A file** is UTF-8 text and its name ends in \`.headnote\`. Each line stands for itself: a line that is wrong
harms no other. A file needs no tool to be read.

**The version line** comes first: \`headnote 1\`. Only blank lines and comments may stand above it.

**There are four kinds of line.** The first word tells which it is.

- A _heading_ opens a block: \`bench\`, \`port\`, \`session\`, \`run\`. The block ends where the next heading begins. Blocks may
  come in any order.
- A _property_ says something of the block above it: a keyword, then its values.
- A line of _columns_ opens a table. A column that measures something has its unit in brackets: \`lift[in]\`.
- A _row_ is one reading: one cell for each column. \`-\` means "not read". Rows stand in the order in which the points
  were taken.

**Values** come in two sorts. Those without a word of their own come first and in order. The others stand behind their
word and may come in any order: \`seat 45 deg width 0.060 in\`. In the forms below, capitals stand for a value, \`a|b\` for one
of several words, and brackets \`[ ]\` for what may be left out.

**Numbers** have a point: \`0.400\`, \`28\`, \`.5\`, \`-3.2\`. Fractions are numbers: \`11/32\`, \`1-3/8\`. A comma, a \`+\`, an
exponent or a point at the end (\`5.\`) is an error, and comes with a fix. The digits that you write are kept: \`0.400\` says
more than \`0.4\`, and is taken at its word.

**A unit** stands behind every number that measures something, and in exactly one place: behind the number, or in the
head of the column. Nothing is converted in the file.

**Names** have letters, digits, \`.\`, \`_\` and \`-\`, and begin with a letter or a digit. A name is used once for each kind of
thing.

**Text** stands in double quotes. Inside it, write \`\\"\` for a quote and \`\\\\\` for a backslash.

**Comments** begin with \`#\`, at the start of a line or behind a blank.

**A remark** in quotes may stand behind the cells of a row.

**Void.** A reading that is wrong is not deleted. Write \`void "why"\` behind it. It stays in the file and is never used.

**Include.** \`include "../shop.headnote"\` makes what another file defines known here. The path counts from the file that
it stands in, uses \`/\`, and stays inside the workspace. The workspace is the folder that holds the nearest \`headnote.json\`,
else the repository, else the file's own folder.

**Allow.** A comment \`# allow CODE: reason\` silences one kind of finding, on its own line or on the line below it. For
several kinds several comments stand above the line. Say why.

**Your own keywords** begin with \`x-\`. Their lines are kept and not read.

**Where a value comes from.** A run takes each condition from its own lines, else from the session of its file. Where
neither says anything: the target is 28 inH2O; the quoted depression is the target; the band around the target is the
bench's, else 1 % of the target; the air is \`isa\`; no leak is taken off; the bench repeats to 1 %; a lift is set to
0.001 in; an intake port is drawn through and an exhaust port blown through. The ones that matter are reported when they
are used. (Common practice, no published source.)`;

/** What the format promises. */
export const STABILITY = `<a id="stability"></a>

## What will not change

- A file needs no tool to be read. Every value stands in it, with its unit, as it was read off.
- Derived numbers are never written into a record. They are computed each time.
- A keyword that is not known is reported, kept, and given back untouched. So is a line that cannot be read.
- The formatter changes blanks and line ends between words, and nothing else.
- Within a major version things are only added. What is added never changes the meaning of a valid file.
- A reader that meets a higher version says so once, and reads the file as far as it can.
- The codes of findings are never used again for something else.`;

/** The first page, with a whole record. */
export function firstPage(): string {
  return [PAGES, fence("headnote", FIRST_RECORD), RULES].join("\n\n");
}
