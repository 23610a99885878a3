// `check --watch` judges again after a change, and only after one that matters.
import { join } from "node:path";
import { expect, test } from "vitest";
import type { WatchedFolder } from "../../server/cli/io.ts";
import { inShop } from "../kit/command.ts";

const NEAT = "headnote 1\nbench b\n  shows      flow\n";
const BROKEN = "headnote 1\nbench b\n  shows      flw\n";

interface Gate {
  readonly open: () => void;
  readonly opened: Promise<void>;
}

function gate(): Gate {
  let open = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { open, opened };
}

test("a change is judged, and clears a terminal only", async () => {
  for (const isTerminal of [false, true]) {
    await inShop({ "a/x.headnote": NEAT, "shop.headnote": NEAT }, async (shop) => {
      const end = gate();
      const watched: (readonly WatchedFolder[])[] = [];
      let stopped = 0;
      const { code, out, err } = await shop.headnote(["check", "a", "--color", "never", "--watch"], {
        isTerminal: () => isTerminal,
        ended: end.opened,
        watch: (folders, changed) => {
          watched.push(folders);
          if (watched.length === 1) {
            changed(join(shop.folder, "a/notes.txt"));
            shop.write("a/x.headnote", BROKEN);
            changed(join(shop.folder, "a/x.headnote"));
            changed(join(shop.folder, "a/x.headnote"));
          } else end.open();
          return () => {
            stopped++;
          };
        },
      });
      expect(code).toBe(1);
      expect(out).toMatch(/^1 file, no findings\n/);
      expect(out).toMatch(/\n1 file, 1 error\n$/);
      expect(out.includes("\u001B[2J")).toBe(isTerminal);
      expect(err).toBe("watching 1 file for changes\n".repeat(2));
      expect(watched[0]).toEqual([{ path: join(shop.folder, "a"), recursive: true }]);
      expect(stopped).toBe(watched.length);
    });
  }
});

test("the folders of single files and of what they include are watched without those below", async () => {
  const record = 'headnote 1\ninclude "../shop.headnote"\n';
  await inShop({ "headnote.json": "{}", "a/x.headnote": record, "shop.headnote": NEAT }, async (shop) => {
    const seen: WatchedFolder[] = [];
    await shop.headnote(["check", "a/x.headnote", "--watch"], {
      watch: (folders) => {
        seen.push(...folders);
        return () => undefined;
      },
    });
    expect(seen).toEqual([
      { path: join(shop.folder, "a"), recursive: false },
      { path: shop.folder, recursive: false },
    ]);
  });
});

test("folders that cannot be watched are said so", async () => {
  await inShop({ "x.headnote": NEAT }, async (shop) => {
    const { code, err } = await shop.headnote(["check", "--watch"], {
      watch: () => {
        throw Object.assign(new Error("limit"), { code: "ENOSPC" });
      },
    });
    expect(code).toBe(2);
    expect(err).toMatch(/^headnote: the folders cannot be watched: /);
  });
});

test("standard input is not", async () => {
  await inShop({}, async (shop) => {
    expect((await shop.headnote(["check", "-", "--watch"])).code).toBe(2);
  });
});
