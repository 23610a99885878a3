// What is read of a disk, whatever the size of a file.
import { truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readText } from "../../server/disk/disk-files.ts";
import { inShop } from "../kit/command.ts";

function checkRead(bytes: string | Uint8Array, expected: ReturnType<typeof readText>): Promise<void> {
  return inShop({ "before.headnote": "# what was read before\n" }, async (shop) => {
    readText(join(shop.folder, "before.headnote"));
    const path = join(shop.folder, "x.headnote");
    writeFileSync(path, bytes);
    expect(readText(path)).toEqual(expected);
  });
}

test.each([0, 1, 65_535, 65_536, 65_537, 131_072, 131_073, 300_000])(
  "a file of %d bytes is read whole",
  async (size) => {
    const text = "0123456789\n".repeat(30_000).slice(0, size);
    await checkRead(text, { text });
  },
);

test("a character may stand anywhere, and so may a byte order mark", async () => {
  for (const before of [65_533, 65_534, 65_535]) {
    const text = `\uFEFF${"-".repeat(before - 3)}é€😀`;
    await checkRead(text, { text });
  }
});

test("the mark of what cannot be read may stand in a text, but no such byte", async () => {
  await checkRead("a \uFFFD\n", { text: "a \uFFFD\n" });
  await checkRead(Uint8Array.of(0x61, 0xff), { problem: "it is not UTF-8 text" });
});

test("what is not there, no file or too large is said", () =>
  inShop({ "x.headnote": "" }, async (shop) => {
    const path = join(shop.folder, "x.headnote");
    truncateSync(path, 64 * 1024 * 1024 + 1);
    expect(readText(path)).toEqual({ problem: "it is larger than 64 MB" });
    expect(readText(shop.folder)).toEqual({ problem: "it is a folder" });
    expect(readText(join(shop.folder, "y.headnote"))).toEqual({ problem: "it is not there" });
  }));
