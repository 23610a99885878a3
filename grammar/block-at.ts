// Finds the block of a line among the blocks of a file.

/** The index of the last block that begins on a line or above it; -1 above the first one. */
export function blockIndexAt(blocks: readonly { readonly start: number }[], line: number): number {
  let low = 0;
  let high = blocks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((blocks[middle]?.start ?? 0) <= line) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
