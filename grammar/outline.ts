// Folds the lines of a file into its blocks: what opens a block, what belongs to it, and what has no place.
import { type Finding, raise, shiftedFinding } from "../shared/finding.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { readNumber } from "../shared/quantity/number.ts";
import type { Span } from "../shared/text/span.ts";
import { findColumn } from "./columns.ts";
import type { Heading } from "./directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  isKeyword,
  propertyKeywords,
} from "./directives/index.ts";
import { extraValue } from "./findings/extra-value.ts";
import { misplacedLine } from "./findings/misplaced-line.ts";
import { missingValue } from "./findings/missing-value.ts";
import { unknownKeyword } from "./findings/unknown-keyword.ts";
import { version } from "./findings/version.ts";
import { isOwnKeyword } from "./line-kind.ts";
import { parseRow } from "./line-parser.ts";
import { type Block, type BlockMemory, blockMemory, lowerBlock } from "./lower-block.ts";
import { type DirectiveLine, type Line, quoted } from "./tree.ts";

/** An `include` line; its span is that of the path. */
export interface Include {
  readonly path: string;
  readonly span: Span;
}

/** A block and the line of the file that it begins on; everything inside the block counts from there. */
export interface PlacedBlock {
  readonly start: number;
  readonly block: Block;
}

/** What a file says, block by block. */
export interface Outline {
  readonly lines: readonly Line[];
  readonly blocks: readonly PlacedBlock[];
  readonly includes: readonly Include[];
  /** Whether a conflict marker stands in the file. */
  readonly conflicted: boolean;
  /** Findings outside the blocks; spans count from the file's first line. */
  readonly findings: readonly Finding[];
}

/** Keywords that stand outside the blocks. */
export const FILE_KEYWORDS: readonly string[] = ["headnote", "include"];
export const FORMAT_VERSION = 1;

interface Open {
  readonly start: number;
  readonly heading: Heading;
  readonly lines: Line[];
  /** Whether the table's first column is a choice; `undefined` before the table has a head. */
  choiceFirst: boolean | undefined;
}

interface Fold {
  readonly lines: readonly Line[];
  readonly memory: BlockMemory;
  readonly blocks: PlacedBlock[];
  readonly includes: Include[];
  readonly findings: Finding[];
  open: Open | undefined;
  versioned: boolean;
  conflicted: boolean;
}

const shared = blockMemory();

/**
 * Folds lines into blocks. Never throws; every line that says something is in a block, an include, or a finding. Blocks
 * that `memory` knows are not read again.
 */
export function outline(lines: readonly Line[], memory: BlockMemory = shared): Outline {
  const fold: Fold = {
    lines,
    memory,
    blocks: [],
    includes: [],
    findings: [],
    open: undefined,
    versioned: false,
    conflicted: false,
  };
  for (let index = 0; index < lines.length; index++) {
    const line = lines[index];
    if (line !== undefined) add(fold, line, index);
  }
  close(fold);
  const { blocks, includes, findings, conflicted } = fold;
  return { lines, blocks, includes, findings, conflicted };
}

function add(fold: Fold, line: Line, index: number): void {
  if (line.kind === "conflict") {
    fold.conflicted = true;
    keep(fold, line, index);
    return;
  }
  if (line.kind !== "blank" && !fold.versioned) {
    fold.versioned = true;
    if (line.kind === "directive" && line.keyword.text === "headnote") {
      readVersion(fold, line, index);
      return;
    }
    if (line.kind !== "directive" || !isMisspeltVersion(line)) noVersion(fold, line, index);
  }
  if (line.kind === "directive") addDirective(fold, line, index);
  else if (line.kind === "blank" || fold.open !== undefined) {
    if (line.kind === "columns" && fold.open !== undefined && fold.open.heading.columns !== undefined) {
      fold.open.choiceFirst ??= findColumn(line.heads[0]?.name.text ?? "")?.dimensions.length === 0;
    }
    keep(fold, line, index);
  } else misplaced(fold, line, index, line.kind === "row" ? "a row of readings" : "a line of columns");
}

function addDirective(fold: Fold, line: DirectiveLine, index: number): void {
  const keyword = line.keyword.text;
  if (keyword === "include") {
    readInclude(fold, line, index);
    return;
  }
  if (keyword === "headnote") {
    misplaced(fold, line, index, "the version line");
    return;
  }
  const { open } = fold;
  const heading = findHeading(keyword);
  if (heading !== undefined && (open === undefined || opensBlock(fold.lines, line, index, open.heading))) {
    begin(fold, heading, line, index);
    return;
  }
  if (open !== undefined && findProperty(open.heading.block, keyword) !== undefined) {
    open.lines.push(line);
    return;
  }
  if (isOwnKeyword(keyword)) {
    keep(fold, line, index);
    return;
  }
  if (open !== undefined && readsAsRow(line, open)) {
    open.lines.push(asRow(line));
    return;
  }
  if (isKeyword(keyword)) {
    misplaced(fold, line, index, `'${keyword}'`);
    return;
  }
  reportUnknown(fold, line, index);
}

/**
 * Some keywords open a block and also stand in one (`bench`, `port`, `engine`, `cam`). Inside a block that takes such a
 * line it is a heading if it has a title, or if what follows belongs to the block it would open. So the order of blocks
 * never matters.
 */
function opensBlock(lines: readonly Line[], line: DirectiveLine, index: number, here: Heading): boolean {
  const keyword = line.keyword.text;
  const would = findHeading(keyword);
  if (would === undefined || findProperty(here.block, keyword) === undefined) return true;
  return line.atoms.some((atom) => atom.kind === "text") || goesOnAs(would, lines, index, here) === true;
}

/** A block's lines stand near its heading; looking no further keeps the time linear in the length of any file. */
const LOOK_AHEAD = 100;

/**
 * Whether the lines below belong to the block that a line would open rather than to the open one: the first that only one
 * of the two can hold tells. `undefined` where none does.
 */
function goesOnAs(would: Heading, lines: readonly Line[], index: number, here: Heading): boolean | undefined {
  const end = Math.min(lines.length, index + LOOK_AHEAD);
  for (let i = index + 1; i < end; i++) {
    const next = lines[i];
    if (next === undefined || next.kind === "blank" || next.kind === "conflict") continue;
    let inHere = here.columns !== undefined;
    let inThere = would.columns !== undefined;
    if (next.kind === "directive") {
      const word = next.keyword.text;
      inHere = findProperty(here.block, word) !== undefined;
      inThere = findProperty(would.block, word) !== undefined;
      // What opens a block of its own says nothing about this one.
      if (!inHere && findHeading(word) !== undefined && opensBlock(lines, next, i, would)) return undefined;
    }
    if (inHere !== inThere) return inThere;
  }
  return undefined;
}

/** A row whose first column is a choice, or whose first number is misspelt. */
function readsAsRow(line: DirectiveLine, open: Open): boolean {
  if (open.choiceFirst === undefined) return false;
  const cells = line.atoms.filter((atom) => atom.kind === "word");
  const read = cells.filter((atom) => atom.text === "-" || "value" in readNumber(atom.text)).length;
  return cells.length > 0 && (open.choiceFirst ? read > 0 : read * 2 > cells.length);
}

const rows = new WeakMap<DirectiveLine, Line>();

/** The line as a row; the same node again for the same line, so that its block is known to be unchanged. */
function asRow(line: DirectiveLine): Line {
  const row = rows.get(line) ?? parseRow(line.text);
  rows.set(line, row);
  return row;
}

function begin(fold: Fold, heading: Heading, line: DirectiveLine, index: number): void {
  close(fold);
  fold.open = { start: index, heading, lines: [line], choiceFirst: undefined };
}

function close(fold: Fold): void {
  const { open } = fold;
  if (open === undefined) return;
  fold.blocks.push({ start: open.start, block: lowerBlock(open.heading, open.lines, fold.memory) });
  fold.open = undefined;
}

/** Keeps a line where it stands: in the open block, so that lines count right, or among the file's own lines. */
function keep(fold: Fold, line: Line, index: number): void {
  if (fold.open !== undefined) fold.open.lines.push(line);
  else for (const finding of line.findings) fold.findings.push(shiftedFinding(finding, index));
}

/** Keeps a line that says nothing to its block: a blank one in its place, its own findings with the file. */
function setAside(fold: Fold, line: Line, index: number): void {
  for (const finding of line.findings) fold.findings.push(shiftedFinding(finding, index));
  fold.open?.lines.push(ASIDE);
}

const ASIDE: Line = { kind: "blank", text: "", findings: [] };

function misplaced(fold: Fold, line: Line, index: number, what: string): void {
  const where =
    fold.open === undefined ? "before the first heading" : `in a ${fold.open.heading.block} block`;
  const homes =
    line.kind === "directive"
      ? headingKeywords.filter((block) => findProperty(findHeading(block)?.block ?? "run", line.keyword.text))
      : [];
  const takes = homes.length === 0 ? "" : `it belongs in ${homes.join(" or ")}`;
  const span = spanOf(line, index);
  fold.findings.push(raise(misplacedLine, span, { what, where, takes }));
  setAside(fold, line, index);
}

function reportUnknown(fold: Fold, line: DirectiveLine, index: number): void {
  const { open } = fold;
  const keyword = line.keyword.text;
  const here = open === undefined ? [] : propertyKeywords(open.heading.block);
  const [near] = nearest(keyword, [...here, ...headingKeywords, ...FILE_KEYWORDS]);
  const span = { line: index, from: line.keyword.from, to: line.keyword.to };
  const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
  fold.findings.push(raise(unknownKeyword, span, { written: keyword, nearest: near ?? "" }, { fix }));
  const heading = near === undefined || here.includes(near) ? undefined : findHeading(near);
  if (heading !== undefined && meantAsHeading(fold, heading, line, index)) begin(fold, heading, line, index);
  else setAside(fold, line, index);
}

/**
 * A misspelt heading still opens its block, since the lines below it belong nowhere else. That it is one is told by the
 * lines below it, or else by where it stands.
 */
function meantAsHeading(
  { lines, open }: Fold,
  heading: Heading,
  line: DirectiveLine,
  index: number,
): boolean {
  return open === undefined || (goesOnAs(heading, lines, index, open.heading) ?? line.keyword.from === 0);
}

function readInclude(fold: Fold, line: DirectiveLine, index: number): void {
  const [path, extra] = line.atoms;
  const form = 'include "path"';
  if (path?.kind === "text" && extra === undefined) {
    fold.includes.push({ path: path.text, span: { line: index, from: path.from, to: path.to } });
  } else if (path === undefined) {
    const args = { keyword: "include", missing: "a path in quotes", form };
    fold.findings.push(raise(missingValue, spanOf(line, index), args));
  } else {
    const [from, to] = [(path.kind === "text" ? extra : path)?.from, line.atoms.at(-1)?.to];
    const span = { ...spanOf(line, index), from: from ?? path.from, to: to ?? path.to };
    const args = { keyword: "include", written: quoted(line, span.from, span.to), form };
    fold.findings.push(raise(extraValue, span, args));
  }
  setAside(fold, line, index);
}

function readVersion(fold: Fold, line: DirectiveLine, index: number): void {
  const written = quoted(line, line.keyword.to, line.atoms.at(-1)?.to ?? line.keyword.to);
  const number = /^[0-9]{1,9}$/.test(written) ? Number(written) : 0;
  if (number !== FORMAT_VERSION) {
    const problem = number > FORMAT_VERSION ? "newer" : written === "" ? "none" : "unreadable";
    fold.findings.push(raise(version, spanOf(line, index), { problem, written }));
  }
  setAside(fold, line, index);
}

/** `headnot 1` is reported as a misspelt keyword, and that is enough. */
function isMisspeltVersion(line: DirectiveLine): boolean {
  const keyword = line.keyword.text;
  return !isKeyword(keyword) && nearest(keyword, [...headingKeywords, "headnote"])[0] === "headnote";
}

function noVersion(fold: Fold, line: Line, index: number): void {
  const from = line.text.startsWith("\uFEFF") ? 1 : 0;
  const at = { line: index, from, to: from };
  const fix = { title: "Begin the file with its version line", edits: [{ span: at, text: "headnote 1\n" }] };
  fold.findings.push(raise(version, spanOf(line, index), { problem: "none", written: "" }, { fix }));
}

/** The line without the blanks around it. */
function spanOf(line: Line, index: number): Span {
  const from = line.text.length - line.text.trimStart().length;
  const to =
    line.kind === "directive" ? (line.atoms.at(-1)?.to ?? line.keyword.to) : line.text.trimEnd().length;
  return { line: index, from, to };
}
