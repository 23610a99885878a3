// Folds the lines of a file into its blocks and, after an edit, only those near to what has changed.
import { difference } from "../shared/difference.ts";
import { type Finding, shiftedFinding } from "../shared/finding.ts";
import { shifted } from "../shared/text/span.ts";
import { blockIndexAt } from "./block-at.ts";
import type { Include } from "./include-line.ts";
import { type Block, type BlockMemory, blockMemory, lowerBlock } from "./lower-block.ts";
import { LOOK_AHEAD } from "./opens-block.ts";
import { type Asides, NO_ASIDES, type Opening, readPart } from "./read-part.ts";
import type { Line } from "./tree.ts";

/** A block and the line of the file that it begins on; everything inside the block counts from there. */
export interface PlacedBlock {
  readonly start: number;
  readonly block: Block;
  /** What stands among its lines and belongs to the file. */
  readonly asides: Asides;
}

/** What a file says, block by block. */
export interface Outline {
  readonly lines: readonly Line[];
  /** What stands before the first block. */
  readonly head: Asides;
  readonly blocks: readonly PlacedBlock[];
  readonly includes: readonly Include[];
  /** Whether a conflict marker stands in the file. */
  readonly conflicted: boolean;
  /** Findings outside the blocks; spans count from the file's first line. */
  readonly findings: readonly Finding[];
}

const shared = blockMemory();

/**
 * Folds lines into blocks. Never throws; every line that says something is in a block, an include, or a finding. Blocks
 * that `memory` knows are not read again, and of the lines only those near to what differs from `previous` are looked at;
 * the result is the same as without either.
 */
export function outline(
  lines: readonly Line[],
  memory: BlockMemory = shared,
  previous: Outline = NOTHING,
): Outline {
  const { before, after } = difference(lines, previous.lines);
  // A block stays the same while the lines do that tell where it ends.
  const last = blockIndexAt(previous.blocks, before - LOOK_AHEAD);
  const restart = previous.blocks[last];
  let blocks = previous.blocks.slice(0, Math.max(0, last));
  const moved = lines.length - previous.lines.length;
  let { head } = previous;
  let opening: Opening | undefined = { index: 0, heading: undefined };
  if (restart !== undefined) opening = { index: restart.start, heading: restart.block.heading };
  while (opening !== undefined) {
    const { index, heading }: Opening = opening;
    // What stands before the first block is looked at even where that block is the first line now.
    const isNew = heading === undefined || index < lines.length - after;
    const same = isNew ? -1 : blockIndexAt(previous.blocks, index - moved);
    const known = previous.blocks[same];
    // What a heading opens is always the same block, and from there on so is the rest.
    if (known !== undefined && known.start === index - moved) {
      blocks = blocks.concat(movedBy(previous.blocks.slice(same), moved));
      break;
    }
    const part = readPart(lines, opening);
    if (heading === undefined) head = part.asides;
    else blocks.push({ start: index, block: lowerBlock(heading, part.lines, memory), asides: part.asides });
    opening = part.next;
  }
  return gathered(lines, head, blocks);
}

const NOTHING: Outline = gathered([], NO_ASIDES, []);

function gathered(lines: readonly Line[], head: Asides, blocks: readonly PlacedBlock[]): Outline {
  const all = [head];
  for (const { asides } of blocks) if (asides !== NO_ASIDES) all.push(asides);
  return {
    lines,
    head,
    blocks,
    includes: all.flatMap(({ includes }) => includes),
    conflicted: all.some(({ conflicted }) => conflicted),
    findings: all.flatMap(({ findings }) => findings),
  };
}

function movedBy(blocks: readonly PlacedBlock[], lines: number): readonly PlacedBlock[] {
  if (lines === 0) return blocks;
  return blocks.map(({ start, block, asides }) => ({
    start: start + lines,
    block,
    asides: asides === NO_ASIDES ? asides : movedAsides(asides, lines),
  }));
}

function movedAsides({ includes, findings, conflicted }: Asides, lines: number): Asides {
  return {
    includes: includes.map(({ path, span }) => ({ path, span: shifted(span, lines) })),
    findings: findings.map((finding) => shiftedFinding(finding, lines)),
    conflicted,
  };
}
