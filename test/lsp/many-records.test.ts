// A workspace of two thousand records: all are judged, searched and renamed in, and an edit of what they share reaches them.
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Location, WorkspaceDiagnosticReport, WorkspaceEdit } from "vscode-languageserver";
import { sharedRecords } from "../bench/records.ts";
import { FULL, type Session, session } from "../kit/session.ts";

const COUNT = 2000;
const SHOP = "file:///shop/shop.headnote";
const files = Object.fromEntries(
  [...sharedRecords(COUNT, 30)].map(([path, text]) => [`file:///shop/${path}`, text]),
);
const place = { textDocument: { uri: SHOP }, position: { line: 2, character: 8 } };

let asked: Session;
beforeAll(async () => {
  asked = await session(FULL, files);
  await asked.open(SHOP, files[SHOP] ?? "");
});
afterAll(() => asked.close());

const judge = (before: WorkspaceDiagnosticReport = { items: [] }) =>
  asked.ask<WorkspaceDiagnosticReport>("workspace/diagnostic", {
    previousResultIds: before.items.map(({ uri, resultId = "" }) => ({ uri, value: resultId })),
  });

test("each is judged, and told of again only when something else is found", { timeout: 60_000 }, async () => {
  const first = await judge();
  expect(first.items).toHaveLength(COUNT + 2);
  expect(first.items.every(({ kind }) => kind === "full")).toBe(true);
  const second = await judge(first);
  expect(second.items.every(({ kind }) => kind === "unchanged")).toBe(true);
  // A band that no reading keeps is found in every record.
  await asked.change(SHOP, (files[SHOP] ?? "").replace("within     0.2", "within     0.01"));
  const third = await judge(second);
  expect(third.items.filter(({ kind }) => kind === "full")).toHaveLength(COUNT);
  await asked.change(SHOP, files[SHOP] ?? "");
});

test("a name is found and changed in all of them", async () => {
  const found = await asked.ask<Location[]>("textDocument/references", {
    ...place,
    context: { includeDeclaration: true },
  });
  expect(found).toHaveLength(COUNT + 1);
  const { changes } = await asked.ask<WorkspaceEdit>("textDocument/rename", { ...place, newName: "slow" });
  expect(Object.keys(changes ?? {})).toHaveLength(COUNT + 1);
});

test("what all of them include may be moved", async () => {
  const move = { oldUri: SHOP, newUri: "file:///shop/benches/shop.headnote" };
  const { changes } = await asked.ask<WorkspaceEdit>("workspace/willRenameFiles", { files: [move] });
  expect(Object.keys(changes ?? {})).toHaveLength(COUNT);
});

test("where there are more than are looked through, that is said, once", async () => {
  const many = Object.fromEntries(
    Array.from({ length: 5001 }, (_, index) => [`file:///shop/${index}.headnote`, "headnote 1\n"]),
  );
  const crowd = await session(FULL, many);
  const said: string[] = [];
  crowd.client.onNotification("window/showMessage", ({ message }: { message: string }) => {
    said.push(message);
  });
  for (const query of ["a", "b"]) await crowd.ask("workspace/symbol", { query });
  crowd.close();
  expect(said).toEqual(["5001 records are in this workspace; names are looked for in 5000 of them."]);
});
