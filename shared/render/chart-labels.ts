// Finds room for the labels of a chart: none on another, all inside the picture.

/** A rectangle in pixels, y downwards. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where a label may stand, and what it costs there beside the obstacles under it, each of which costs 1. */
export type Corner = readonly [left: number, top: number, cost?: number];

/** A label's size and the corners where it may stand, of equally good ones the best first. */
export interface Wish {
  readonly width: number;
  readonly height: number;
  readonly corners: readonly Corner[];
  /** A shorter form, for where there is no room or only a dear one. */
  readonly instead?: Wish;
}

/** Where a label stands, and in which form: 0 as wished, 1 as its `instead`, and so on. */
export interface Placed extends Box {
  readonly form: number;
}

/** A label at the end of a line: where its middle should stand, and its height. */
export interface EndLabel {
  readonly middle: number;
  readonly height: number;
}

/** A shorter form is taken where it saves this much. */
const SHORTER = 3;

/**
 * A box for each wish, in order: of its corners that are free of earlier labels and of `kept` the one that costs
 * least, of equals the first. `undefined` where there is none: such a label is left out. Boxes never overlap,
 * never cover what is kept, and never leave the frame.
 */
export function placeLabels(
  wishes: readonly Wish[],
  obstacles: readonly Box[],
  kept: readonly Box[],
  frame: Box,
): (Placed | undefined)[] {
  const taken: Box[] = [];
  const [under, above] = [columnsOf(obstacles), columnsOf(kept)];
  const best = ({ width, height, corners }: Wish, limit: number) => {
    let found: Box | undefined;
    let least = limit;
    for (const [left, top, extra = 0] of corners) {
      const box = { left, top, width, height };
      if (extra >= least || !inside(box, frame)) continue;
      if (taken.some((other) => overlap(box, other)) || countUnder(above, box) > 0) continue;
      const cost = extra + countUnder(under, box);
      if (cost < least) [found, least] = [box, cost];
      if (cost === 0) break;
    }
    return found && { box: found, cost: least };
  };
  return wishes.map((first) => {
    let placed: Placed | undefined;
    let limit = Number.POSITIVE_INFINITY;
    let form = 0;
    for (let wish: Wish | undefined = first; wish !== undefined && limit > 0; wish = wish.instead, form++) {
      const found = best(wish, limit);
      if (found !== undefined) placed = { ...found.box, form };
      limit = Math.min(limit, found?.cost ?? limit) - SHORTER;
    }
    if (placed !== undefined) taken.push(placed);
    return placed;
  });
}

/** Boxes by the columns, each so many pixels wide, that they reach into. */
const COLUMN = 48;
type Columns = ReadonlyMap<number, readonly Box[]>;

function columnsOf(boxes: readonly Box[]): Columns {
  const columns = new Map<number, Box[]>();
  for (const box of boxes) {
    for (let at = columnAt(box.left); at <= columnAt(box.left + box.width); at++) {
      const column = columns.get(at);
      if (column === undefined) columns.set(at, [box]);
      else column.push(box);
    }
  }
  return columns;
}

function columnAt(x: number): number {
  return Math.floor(x / COLUMN);
}

/** How many of the boxes the box overlaps; each is counted in the first column that both reach into. */
function countUnder(columns: Columns, box: Box): number {
  const first = columnAt(box.left);
  let count = 0;
  for (let at = first; at <= columnAt(box.left + box.width); at++) {
    for (const other of columns.get(at) ?? []) {
      if (at === Math.max(first, columnAt(other.left)) && overlap(box, other)) count++;
    }
  }
  return count;
}

/**
 * Tops of labels in one column from `low` to `high`, each as near to where it should stand as the others allow (least
 * squares, by pooling neighbours that would overlap). `undefined` if they do not fit together.
 */
export function spreadLabels(labels: readonly EndLabel[], low: number, high: number): number[] | undefined {
  const total = labels.reduce((sum, label) => sum + label.height, 0);
  if (total > high - low) return undefined;
  const order = labels
    .map((label, index) => ({ ...label, index }))
    .sort((a, b) => a.middle - b.middle || a.index - b.index);
  interface Pool {
    readonly members: typeof order;
    readonly height: number;
    /** Sum of the tops that each member would give the pool. */
    readonly wanted: number;
  }
  const topOf = ({ members, height, wanted }: Pool) =>
    Math.min(Math.max(wanted / members.length, low), high - height);
  const pools: Pool[] = [];
  for (const member of order) {
    let pool: Pool = { members: [member], height: member.height, wanted: member.middle - member.height / 2 };
    for (
      let above = pools.at(-1);
      above !== undefined && topOf(above) + above.height > topOf(pool);
      above = pools.at(-1)
    ) {
      pools.pop();
      pool = {
        members: [...above.members, ...pool.members],
        height: above.height + pool.height,
        wanted: above.wanted + pool.wanted - pool.members.length * above.height,
      };
    }
    pools.push(pool);
  }
  const tops = new Array<number>(labels.length).fill(low);
  for (const pool of pools) {
    let top = topOf(pool);
    for (const { index, height } of pool.members) {
      tops[index] = top;
      top += height;
    }
  }
  return tops;
}

/** Boxes along a straight line, so that labels keep off it. */
export function boxesAlong(x1: number, y1: number, x2: number, y2: number): Box[] {
  const steps = Math.min(200, Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / 8)));
  const boxes: Box[] = [];
  for (let i = 0; i < steps; i++) {
    const [dx, dy] = [(x2 - x1) / steps, (y2 - y1) / steps];
    boxes.push({
      left: x1 + dx * i + Math.min(0, dx) - 1,
      top: y1 + dy * i + Math.min(0, dy) - 1,
      width: Math.abs(dx) + 2,
      height: Math.abs(dy) + 2,
    });
  }
  return boxes;
}

/** Whether two boxes share more than an edge (to a millionth of a pixel). */
export function overlap(a: Box, b: Box): boolean {
  const least = 1e-6;
  return (
    a.left + a.width > b.left + least &&
    b.left + b.width > a.left + least &&
    a.top + a.height > b.top + least &&
    b.top + b.height > a.top + least
  );
}

function inside(box: Box, frame: Box): boolean {
  return (
    box.left >= frame.left &&
    box.top >= frame.top &&
    box.left + box.width <= frame.left + frame.width &&
    box.top + box.height <= frame.top + frame.height
  );
}
