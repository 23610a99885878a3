// What the server is told when it asks the editor for a file.
import { beforeEach, expect, test, vi } from "vitest";
import { listFiles, readFile } from "../../client/workspace-files.ts";
import { listFilesAnswer, readFileAnswer } from "../../shared/messages/requests.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

const URI = "memory:///shop/shop.headnote";

async function checkRead(uri: string, expected: unknown): Promise<void> {
  const answer = await readFile({ uri });
  expect(answer).toEqual(expected);
  expect(readFileAnswer.safeParse(answer).success).toBe(true);
}

test("a file is its text", async () => {
  editor.state.files.set(URI, new TextEncoder().encode("headnote 1\nbench ü\n"));
  await checkRead(URI, { text: "headnote 1\nbench ü\n" });
});

test("a file that is not text, not there or not a place is a sentence", async () => {
  editor.state.files.set(URI, new Uint8Array([0x68, 0xff, 0xfe]));
  await checkRead(URI, { problem: "it is not UTF-8 text" });
  await checkRead("memory:///nowhere", { problem: "it is not there" });
  await checkRead("no place at all", { problem: "it cannot be read" });
});

test("records and logs are listed by their URIs", async () => {
  const log = "memory:///shop/traces/one.csv";
  editor.state.files.set(URI, new Uint8Array());
  editor.state.files.set(log, new Uint8Array());
  expect(listFilesAnswer.parse(await listFiles({ ending: ".headnote" })).uris).toEqual([URI]);
  expect(listFilesAnswer.parse(await listFiles({ ending: ".csv" })).uris).toEqual([log]);
});
