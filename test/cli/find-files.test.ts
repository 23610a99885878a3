// Which files a command line means.
import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { findFiles } from "../../server/cli/find-files.ts";
import { inShop, type Shop } from "../kit/command.ts";

const files = {
  "shop.headnote": "",
  "notes.txt": "",
  "a/one.headnote": "",
  "a/two.headnote": "",
  "b/draft-1.headnote": "",
  "b/keep.headnote": "",
  "node_modules/x/y.headnote": "",
  ".old/z.headnote": "",
  ".headnote": "",
};

async function checkFound(shop: Shop, paths: readonly string[], expected: readonly string[]): Promise<void> {
  const found = await findFiles(paths, shop.folder);
  expect(found.files.map((path) => path.slice(shop.folder.length + 1))).toEqual(expected);
}

test("a folder means the records in it and below that are not hidden, in the order of their names", () =>
  inShop(files, (shop) =>
    checkFound(
      shop,
      ["."],
      ["a/one.headnote", "a/two.headnote", "b/draft-1.headnote", "b/keep.headnote", "shop.headnote"],
    ),
  ));

test("a glob is expanded, and each file is met once", () =>
  inShop(files, (shop) =>
    checkFound(
      shop,
      ["a/t*", "*/*.headnote", "a/two.headnote"],
      ["a/two.headnote", "a/one.headnote", "b/draft-1.headnote", "b/keep.headnote"],
    ),
  ));

test("what a repository ignores is left out, down from its top, and the nearest file decides", () =>
  inShop(
    { ...files, ".gitignore": "draft-*\na/\n", "b/.gitignore": "keep.headnote\n!draft-1.headnote\n" },
    async (shop) => {
      mkdirSync(join(shop.folder, ".git"));
      await checkFound(shop, ["."], ["b/draft-1.headnote", "shop.headnote"]);
      await checkFound(shop, ["b"], ["b/draft-1.headnote"]);
      // A file that is named itself is meant.
      await checkFound(shop, ["a/one.headnote"], ["a/one.headnote"]);
    },
  ));

test("links to folders are not followed, so that no circle is walked", () =>
  inShop({ "a/one.headnote": "" }, async (shop) => {
    symlinkSync("..", join(shop.folder, "a/up"));
    await checkFound(shop, ["."], ["a/one.headnote"]);
  }));

test.each([
  ["nowhere.headnote", "nowhere.headnote: it is not there"],
  ["a\\one.headnote", /^a[\\/]one\.headnote: /],
  ["C:\\shop\\one.headnote", /one\.headnote: /],
  ["*.none", "*.none: nothing matches it"],
  ["a\0b", /no file has such a name/],
  ["empty", "empty: there is no record in it"],
])("%j is said not to be found", async (path, problem) => {
  await inShop(files, async (shop) => {
    mkdirSync(join(shop.folder, "empty"));
    const found = await findFiles([path], shop.folder);
    expect(found.files).toEqual([]);
    expect(found.problems).toEqual([problem instanceof RegExp ? expect.stringMatching(problem) : problem]);
  });
});
