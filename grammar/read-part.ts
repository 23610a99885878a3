// Reads the lines from one heading to the next: what belongs to the block, and what has no place in it.
import { type Finding, raise, shiftedFinding } from "../shared/finding.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { readNumber } from "../shared/quantity/number.ts";
import { findColumn } from "./columns.ts";
import type { Heading } from "./directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  isKeyword,
  propertyKeywords,
} from "./directives/index.ts";
import { FILE_KEYWORDS } from "./file-lines.ts";
import { misplacedLine } from "./findings/misplaced-line.ts";
import { unknownKeyword } from "./findings/unknown-keyword.ts";
import { type Include, readInclude } from "./include-line.ts";
import { isOwnKeyword } from "./line-kind.ts";
import { parseRow } from "./line-parser.ts";
import { meantAsHeading, opensBlock } from "./opens-block.ts";
import { type DirectiveLine, type Line, lineSpan } from "./tree.ts";
import { noVersion, readVersion } from "./version-line.ts";

/** Where a part of a file begins: at its first line, or at one that opens a block. */
export interface Opening {
  readonly index: number;
  readonly heading: Heading | undefined;
}

/** What stands among the lines of a part and belongs to the file; lines count from the file's first. */
export interface Asides {
  readonly includes: readonly Include[];
  readonly findings: readonly Finding[];
  /** Whether a conflict marker stands there. */
  readonly conflicted: boolean;
}

/** The lines of a block, or of what stands before the first one, and what opens the next. */
export interface Part {
  readonly lines: readonly Line[];
  readonly asides: Asides;
  readonly next: Opening | undefined;
}

/** What nearly every block has beside its own lines. */
export const NO_ASIDES: Asides = { includes: [], findings: [], conflicted: false };

interface Reading {
  /** All lines of the file. */
  readonly file: readonly Line[];
  readonly heading: Heading | undefined;
  readonly lines: Line[];
  readonly includes: Include[];
  readonly findings: Finding[];
  /** Whether the table's first column is a choice; `undefined` before the table has a head. */
  choiceFirst: boolean | undefined;
  versioned: boolean;
  conflicted: boolean;
}

/** Reads on from an opening. Never throws; every line that says something is in the block, an include, or a finding. */
export function readPart(file: readonly Line[], { index: first, heading }: Opening): Part {
  const lines: Line[] = [];
  const includes: Include[] = [];
  const findings: Finding[] = [];
  const versioned = heading !== undefined;
  const reading: Reading = {
    file,
    heading,
    lines,
    includes,
    findings,
    choiceFirst: undefined,
    versioned,
    conflicted: false,
  };
  let index = first;
  for (let line = file[index]; line !== undefined; line = file[++index]) {
    // The heading's own line, and most of those below it.
    if (heading !== undefined && (index === first || line.kind === "row" || line.kind === "blank")) {
      lines.push(line);
      continue;
    }
    const opened = add(reading, line, index);
    if (opened !== undefined) return part(reading, { index, heading: opened });
  }
  return part(reading, undefined);
}

function part({ lines, includes, findings, conflicted }: Reading, next: Opening | undefined): Part {
  const isPlain = includes.length === 0 && findings.length === 0 && !conflicted;
  return { lines, asides: isPlain ? NO_ASIDES : { includes, findings, conflicted }, next };
}

/** Adds a line to what is read, unless it opens the next block: then that one's heading. */
function add(reading: Reading, line: Line, index: number): Heading | undefined {
  if (line.kind === "conflict") {
    reading.conflicted = true;
    return keep(reading, line, index);
  }
  if (line.kind !== "blank" && !reading.versioned) {
    reading.versioned = true;
    if (line.kind === "directive" && line.keyword.text === "headnote") {
      reading.findings.push(...readVersion(line, index));
      return setAside(reading, line, index);
    }
    reading.findings.push(...noVersion(line, index));
  }
  if (line.kind === "directive") return addDirective(reading, line, index);
  const { heading } = reading;
  if (line.kind !== "blank" && heading === undefined) {
    return misplaced(reading, line, index, line.kind === "row" ? "a row of readings" : "a line of columns");
  }
  if (line.kind === "columns" && heading?.columns !== undefined) {
    reading.choiceFirst ??= findColumn(line.heads[0]?.name.text ?? "")?.dimensions.length === 0;
  }
  return keep(reading, line, index);
}

function addDirective(reading: Reading, line: DirectiveLine, index: number): Heading | undefined {
  const keyword = line.keyword.text;
  if (keyword === "include") {
    const read = readInclude(line, index);
    if ("finding" in read) reading.findings.push(read.finding);
    else reading.includes.push(read);
    return setAside(reading, line, index);
  }
  if (keyword === "headnote") return misplaced(reading, line, index, "the version line");
  const here = reading.heading;
  const heading = findHeading(keyword);
  if (heading !== undefined && (here === undefined || opensBlock(reading.file, line, index, here))) {
    return heading;
  }
  if (here !== undefined && findProperty(here.block, keyword) !== undefined) {
    reading.lines.push(line);
    return undefined;
  }
  if (isOwnKeyword(keyword)) return keep(reading, line, index);
  if (here !== undefined && readsAsRow(line, reading)) {
    reading.lines.push(asRow(line));
    return undefined;
  }
  if (isKeyword(keyword)) return misplaced(reading, line, index, `'${keyword}'`);
  return unknown(reading, line, index);
}

/** A row whose first column is a choice, or whose first number is misspelt. */
function readsAsRow(line: DirectiveLine, { choiceFirst }: Reading): boolean {
  if (choiceFirst === undefined) return false;
  const cells = line.atoms.filter((atom) => atom.kind === "word");
  const read = cells.filter((atom) => atom.text === "-" || "value" in readNumber(atom.text)).length;
  return cells.length > 0 && (choiceFirst ? read > 0 : read * 2 > cells.length);
}

const rows = new WeakMap<DirectiveLine, Line>();

/** The line as a row; the same node again for the same line, so that its block is known to be unchanged. */
function asRow(line: DirectiveLine): Line {
  const row = rows.get(line) ?? parseRow(line.text);
  rows.set(line, row);
  return row;
}

/** Keeps a line where it stands: in the block, so that lines count right, or among the file's own lines. */
function keep(reading: Reading, line: Line, index: number): undefined {
  if (reading.heading !== undefined) reading.lines.push(line);
  else for (const finding of line.findings) reading.findings.push(shiftedFinding(finding, index));
}

/** Keeps a line that says nothing to its block: a blank one in its place, its own findings with the file. */
function setAside(reading: Reading, line: Line, index: number): undefined {
  for (const finding of line.findings) reading.findings.push(shiftedFinding(finding, index));
  reading.lines.push(ASIDE);
}

const ASIDE: Line = { kind: "blank", text: "", findings: [] };

function misplaced(reading: Reading, line: Line, index: number, what: string): undefined {
  const { heading, findings } = reading;
  const where = heading === undefined ? "before the first heading" : `in a ${heading.block} block`;
  const homes =
    line.kind === "directive"
      ? headingKeywords.filter((block) => findProperty(findHeading(block)?.block ?? "run", line.keyword.text))
      : [];
  const takes = homes.length === 0 ? "" : `it belongs in ${homes.join(" or ")}`;
  findings.push(raise(misplacedLine, lineSpan(line, index), { what, where, takes }));
  return setAside(reading, line, index);
}

/** Reports a keyword that there is not; where it is a misspelt heading, that is what the line opens. */
function unknown(reading: Reading, line: DirectiveLine, index: number): Heading | undefined {
  const { file, heading: here, findings } = reading;
  const keyword = line.keyword.text;
  const properties = here === undefined ? [] : propertyKeywords(here.block);
  const [near] = nearest(keyword, [...properties, ...headingKeywords, ...FILE_KEYWORDS]);
  const span = { line: index, from: line.keyword.from, to: line.keyword.to };
  const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
  findings.push(raise(unknownKeyword, span, { written: keyword, nearest: near ?? "" }, { fix }));
  const heading = near === undefined || properties.includes(near) ? undefined : findHeading(near);
  if (heading !== undefined && meantAsHeading(file, line, index, here, heading)) return heading;
  return setAside(reading, line, index);
}
