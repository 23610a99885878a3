// The list of features beside what the server announces, so that neither says what the other does not.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { SHOW_CURVE, SHOW_PLACES } from "../../shared/messages/requests.ts";
import { FULL, session } from "../kit/session.ts";

const ROOT = join(import.meta.dirname, "../..");
const text = readFileSync(join(ROOT, "server/lsp/FEATURES.md"), "utf8");
const rows = [...text.matchAll(/^\| ([^|]+) \| `([^`]+)` \| (.+) \|$/gm)].map(
  ([, feature = "", place = "", ours = ""]) => ({ feature, place, ours }),
);
const isFile = (place: string) => /\.(?:ts|md)$/.test(place);

async function announced(): Promise<unknown> {
  const asked = await session(FULL, {}, "disk", [SHOW_CURVE, SHOW_PLACES]);
  asked.close();
  return asked.announced;
}

function at(value: unknown, place: string): unknown {
  return place.split(".").reduce<unknown>((inner, name) => (inner as Record<string, unknown>)?.[name], value);
}

describe("the list of features", () => {
  test("says of each whether it is there, and why where it is not", () => {
    expect(rows.length).toBeGreaterThan(30);
    for (const row of rows)
      expect([row.feature, row.ours]).toEqual([row.feature, expect.stringMatching(/^yes\b|^no: \w/)]);
  });

  test("is what the server announces to a client that can do everything", async () => {
    const answer = await announced();
    for (const { feature, place, ours } of rows) {
      if (isFile(place)) expect([feature, existsSync(join(ROOT, place))]).toEqual([feature, true]);
      else {
        const value = at(answer, place);
        const isThere = value !== undefined && value !== false;
        expect([feature, isThere]).toEqual([feature, ours.startsWith("yes")]);
      }
    }
  });

  test("has everything that the server announces", async () => {
    const listed = new Set(rows.map(({ place }) => place.split(".")[0]));
    expect(Object.keys((await announced()) as object).filter((key) => !listed.has(key))).toEqual([]);
  });

  test("of a client that can do nothing leaves out what needs one that can", async () => {
    const asked = await session({});
    asked.close();
    const { diagnosticProvider, codeLensProvider } = asked.announced;
    expect([diagnosticProvider, codeLensProvider]).toEqual([undefined, undefined]);
  });
});

test("files are watched where the client can watch them", async () => {
  const asked = await session({ workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } });
  const registered = await asked.registered;
  // The server has the client's answer once it answers itself.
  await asked.ask("workspace/symbol", { query: "" });
  asked.close();
  expect(registered).toContain("workspace/didChangeWatchedFiles");
});
