// A record is answered about alike, whatever ends its lines, and whatever kind of document it is.
import { describe, expect, test } from "vitest";
import { questions } from "../kit/questions.ts";
import { shopRecord } from "../kit/service.ts";
import { FULL, session } from "../kit/session.ts";

const RECORD = shopRecord(
  "     0.100               28.0       55.0\n  0.200               27,1      109.6 # slipped\n",
).replace("radiused", "radiusd");

/** What is answered to everything that can be asked of a record, with its own address left out. */
async function answers(uri: string, text: string): Promise<unknown> {
  const asked = await session(FULL);
  try {
    await asked.open(uri, text);
    const given: Record<string, unknown> = {};
    for (const [method, params] of Object.entries(questions(uri))) {
      given[method] = await asked.ask(method, params);
    }
    return JSON.parse(
      JSON.stringify(given)
        .replaceAll(uri, "it")
        .replace(/"resultId":"[^"]*"/g, '"resultId":""'),
    );
  } finally {
    asked.close();
  }
}

const URI = "file:///shop/monday.headnote";
const plain = await answers(URI, RECORD);

test("there is something to answer", () => {
  for (const word of ["decimal-comma", "unknown-choice", "south", "corrected flow"]) {
    expect(JSON.stringify(plain)).toContain(word);
  }
});

describe("the answers are the same", () => {
  test.each([
    ["carriage return and line feed", "\r\n"],
    ["a carriage return", "\r"],
  ])("where lines end in %s", async (_, end) => {
    expect(await answers(URI, RECORD.replaceAll("\n", end))).toEqual(plain);
  });

  test.each([
    "untitled:Untitled-1",
    "vscode-vfs://host/shop/monday.headnote",
    "file:///c%3A/shop/monday.headnote",
  ])("in %s", async (uri) => {
    expect(await answers(uri, RECORD)).toEqual(plain);
  });
});
