import { posix } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { resolvePath } from "../../../shared/text/path.ts";

const part = fc.constantFrom("a", "b.headnote", ".hidden", "..more", "a..", ".", "..", "");

test("paths are worked out as node works them out", () => {
  fc.assert(
    fc.property(
      fc.array(part, { maxLength: 4 }),
      fc.array(part, { minLength: 1, maxLength: 5 }),
      (above, below) => {
        const folder = `/shop/${above.join("/")}`;
        const relative = below.join("/");
        fc.pre(!relative.startsWith("/"));
        expect(resolvePath(folder, relative)).toBe(posix.resolve(folder, relative));
      },
    ),
  );
});

test("what leads out of a relative folder is kept", () => {
  expect(resolvePath("shop", "../../x.headnote")).toBe("../x.headnote");
  expect(resolvePath("", "./x.headnote")).toBe("x.headnote");
});
