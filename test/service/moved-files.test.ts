// Includes and logs lead where they led when files and folders are renamed.
import { expect, test } from "vitest";
import { exampleFiles } from "../../server/generate/example.ts";
import { type Move, movedFiles } from "../../server/service/moved-files.ts";
import { edited, open } from "../kit/service.ts";

const FIXTURE = `headnote 1
include "shop.headnote"
include   "a114/head.headnote"  # the head

run r1
trace 0.300 in of r1
  log        "a114/i3.csv" time "t" s depression "dp" Pa flow "q" L/s
#- a114/head.headnote
headnote 1
include "../shop.headnote"
include "cam.headnote"
#- a114/cam.headnote
headnote 1
#- shop.headnote
headnote 1
include "nowhere.headnote"
`;

/** The lines that are written anew, by the file's path before the moves. */
function checkMoves(moves: readonly Move[], expected: Readonly<Record<string, readonly string[]>>): void {
  const { analyse, paths } = open(FIXTURE);
  const scopes = paths.map((path) => analyse(path).scope);
  const texts = new Map(exampleFiles(FIXTURE).map(({ path, text }) => [path, text]));
  const changed = [...movedFiles(scopes, moves)].map(([path, edits]) => {
    const text = texts.get(path) ?? "";
    const before = text.split("\n");
    const after = edited(text, edits).split("\n");
    return [path, after.filter((line, index) => line !== before[index])];
  });
  expect(Object.fromEntries(changed)).toEqual(expected);
}

test("a file that is renamed is included by its new name, wherever it is included", () => {
  checkMoves([{ from: "shop.headnote", to: 'benches/north "1".headnote' }], {
    "main.headnote": [String.raw`include "benches/north \"1\".headnote"`],
    "a114/head.headnote": [String.raw`include "../benches/north \"1\".headnote"`],
    "shop.headnote": ['include "../nowhere.headnote"'],
  });
});

test("a file that is moved finds what it includes from where it is then", () => {
  checkMoves([{ from: "main.headnote", to: "a114/monday.headnote" }], {
    "main.headnote": [
      'include "../shop.headnote"',
      'include   "head.headnote"  # the head',
      '  log        "i3.csv" time "t" s depression "dp" Pa flow "q" L/s',
    ],
  });
});

test("a folder that is renamed takes all with it, and what is inside it still finds its neighbours", () => {
  checkMoves([{ from: "a114", to: "heads/a114b" }], {
    "main.headnote": [
      'include   "heads/a114b/head.headnote"  # the head',
      '  log        "heads/a114b/i3.csv" time "t" s depression "dp" Pa flow "q" L/s',
    ],
    "a114/head.headnote": ['include "../../shop.headnote"'],
  });
});

test("files that are moved together are not written anew for it, and a name that only begins alike is another file", () => {
  checkMoves([{ from: "a11", to: "b" }], {});
  checkMoves(
    [
      { from: "a114/head.headnote", to: "b/head.headnote" },
      { from: "a114/cam.headnote", to: "b/cam.headnote" },
    ],
    { "main.headnote": ['include   "b/head.headnote"  # the head'] },
  );
});
