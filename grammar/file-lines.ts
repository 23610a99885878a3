// The two lines that open no block and belong to none.

export interface FileLine {
  readonly keyword: string;
  /** Where it stands, in words. */
  readonly place: string;
  readonly signature: string;
  readonly doc: string;
  readonly example: string;
}

const FILE_LINES: readonly FileLine[] = [
  {
    keyword: "headnote",
    place: "a file's first line",
    signature: "headnote 1",
    doc: "Says that the file is a record, and in which version of the format.",
    example: "headnote 1",
  },
  {
    keyword: "include",
    place: "a line of the file",
    signature: 'include "path"',
    doc: "Takes in what another file defines; the path counts from this file's own folder, with /.",
    example: 'include "../shop.headnote"',
  },
];

export const FILE_KEYWORDS: readonly string[] = FILE_LINES.map(({ keyword }) => keyword);

export function findFileLine(keyword: string): FileLine | undefined {
  return FILE_LINES.find((line) => line.keyword === keyword);
}
