// Clients that send nonsense, cancel everything, and go while they are being answered: the server stays up and answers.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import {
  CancellationTokenSource,
  createProtocolConnection,
  type Diagnostic,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { documentOf, POSITION as position, questions } from "../kit/questions.ts";
import { shopRecord } from "../kit/service.ts";
import { FULL, type Session, session } from "../kit/session.ts";

const URI = "file:///shop/monday.headnote";
const RECORD = shopRecord(
  "     0.100               28.0       55.0\n     0.200               28.0      109.6\n",
);

const QUESTIONS = questions(URI);
const document = documentOf(URI);

let asked: Session;
beforeEach(async () => {
  asked = await session(FULL);
  await asked.open(URI, RECORD);
});
afterEach(() => asked.close());

/** What a question comes to: an answer, or a word that there is none. */
function outcome(question: Promise<unknown>): Promise<"answered" | "refused"> {
  return question.then(
    () => "answered",
    () => "refused",
  );
}

/** The server judges and answers as if nothing had happened. */
async function checkUnharmed(): Promise<void> {
  const { items } = await asked.ask<{ items: Diagnostic[] }>("textDocument/diagnostic", document);
  expect(items).toEqual([]);
  expect(await asked.ask("textDocument/hover", { ...document, position })).toMatchObject({
    contents: { value: expect.stringContaining("corrected flow") },
  });
}

describe("a client that sends nonsense", () => {
  const far = { line: 1e9, character: 1e9 };
  const before = { line: -5, character: -5 };
  const nowhere = { textDocument: { uri: "file:///nowhere" }, uri: "not a uri" };
  const NONSENSE: readonly unknown[] = [
    null,
    {},
    [],
    [1, "two"],
    { textDocument: null, position: null, range: null, context: null, positions: null, files: null },
    { textDocument: { uri: 7 }, position: "here", files: [{}], query: 5, previousResultIds: "x" },
    { ...nowhere, position: far, range: { start: far, end: before }, positions: [far], files: [nowhere] },
    { ...document, position: far, range: { start: far, end: far }, positions: [far], newName: 5 },
    {
      ...document,
      position: before,
      range: { start: before, end: before },
      positions: [before],
      newName: "",
    },
    {
      ...document,
      position: { line: "1", character: null },
      range: { start: 1, end: [] },
      context: { only: 3 },
    },
  ];

  test.each(Object.keys(QUESTIONS))("is answered: %s", async (method) => {
    for (const params of NONSENSE) await outcome(asked.client.sendRequest(method, params));
    await checkUnharmed();
  });

  test("may tell it what is not so", async () => {
    const { client } = asked;
    const other = { uri: "file:///shop/never-opened.headnote", version: 3 };
    for (const params of [
      null,
      {},
      { textDocument: other, contentChanges: [{ text: "x" }] },
      { changes: 5 },
    ]) {
      for (const method of [
        "textDocument/didChange",
        "textDocument/didClose",
        "textDocument/didOpen",
        "textDocument/didSave",
        "workspace/didChangeWatchedFiles",
        "workspace/didRenameFiles",
        "workspace/didDeleteFiles",
        "workspace/didChangeConfiguration",
        "$/cancelRequest",
        "$/setTrace",
        "headnote/nonsense",
      ])
        await client.sendNotification(method, params);
    }
    await checkUnharmed();
  });
});

describe("a client that does not wait", () => {
  test("may cancel everything", async () => {
    const questions = Object.entries(QUESTIONS).flatMap(([method, params]) =>
      [1, 2, 3].map(() => {
        const source = new CancellationTokenSource();
        const answer = outcome(asked.client.sendRequest(method, params, source.token));
        source.cancel();
        return answer;
      }),
    );
    for (const answer of await Promise.all(questions)) expect(["answered", "refused"]).toContain(answer);
    await checkUnharmed();
  });

  test("is answered about a document that it has closed meanwhile, or opened anew as another", async () => {
    const questions = Object.entries(QUESTIONS).map(([method, params]) =>
      outcome(asked.client.sendRequest(method, params)),
    );
    await asked.client.sendNotification("textDocument/didClose", document);
    await asked.open("file:///shop/tuesday.headnote", RECORD);
    for (const answer of await Promise.all(questions)) expect(answer).toBe("answered");
    await asked.open(URI, RECORD);
    await checkUnharmed();
  });

  test("is answered while the document changes under its questions", async () => {
    const answers: Promise<string>[] = [];
    for (let length = RECORD.length; length > 0; length -= 40) {
      await asked.change(URI, RECORD.slice(0, length));
      for (const [method, params] of Object.entries(QUESTIONS)) {
        answers.push(outcome(asked.client.sendRequest(method, params)));
      }
    }
    const said = await Promise.all(answers);
    // A name that has gone cannot be renamed, and that is said.
    expect(said.filter((each) => each === "refused").length).toBeLessThan(said.length / 20);
    await asked.change(URI, RECORD);
    await checkUnharmed();
  });
});

describe("the process", () => {
  const framed = (message: object) => {
    const text = JSON.stringify({ jsonrpc: "2.0", ...message });
    return `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
  };
  const initialize = { processId: null, rootUri: null, capabilities: {} };
  const start = () => {
    const command = join(import.meta.dirname, "../../dist/cli.cjs");
    const server = spawn(process.execPath, [command, "lsp", "--stdio"], { stdio: "pipe" });
    let complaints = "";
    server.stderr.on("data", (data) => {
      complaints += data;
    });
    return { server, complaints: () => complaints };
  };

  test("ends without a word when its client goes while it is being asked", async () => {
    const { server, complaints } = start();
    server.stdin.write(framed({ id: 1, method: "initialize", params: initialize }));
    await once(server.stdout, "data");
    server.stdin.write(framed({ method: "initialized", params: {} }));
    const opened = { uri: URI, languageId: "headnote", version: 1, text: RECORD };
    server.stdin.write(framed({ method: "textDocument/didOpen", params: { textDocument: opened } }));
    Object.entries(QUESTIONS).forEach(([method, params], id) => {
      server.stdin.write(framed({ id: id + 2, method, params }));
    });
    server.stdout.destroy();
    server.stdin.end();
    await once(server, "exit");
    expect(complaints()).toBe("");
  });

  test("goes on where the client refuses whatever it is asked", async () => {
    const { server, complaints } = start();
    // What it can do it says, and has no answer to any of it.
    const client = createProtocolConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    client.listen();
    const workspace = {
      configuration: true,
      didChangeWatchedFiles: { dynamicRegistration: true },
      diagnostics: { refreshSupport: true },
      inlayHint: { refreshSupport: true },
      codeLens: { refreshSupport: true },
    };
    await client.sendRequest("initialize", {
      ...initialize,
      capabilities: { ...FULL, workspace },
      initializationOptions: { readsFiles: true },
    });
    await client.sendNotification("initialized", {});
    await client.sendNotification("workspace/didChangeConfiguration", { settings: null });
    await client.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: URI, type: 2 }] });
    const opened = { uri: URI, languageId: "headnote", version: 1, text: `include "x.headnote"\n${RECORD}` };
    await client.sendNotification("textDocument/didOpen", { textDocument: opened });
    for (const [method, params] of Object.entries(QUESTIONS))
      await outcome(client.sendRequest(method, params));
    expect(await client.sendRequest("textDocument/documentSymbol", document)).toHaveLength(4);
    await client.sendRequest("shutdown");
    await client.sendNotification("exit");
    await once(server, "exit");
    expect(complaints()).toBe("");
  });

  test("ends when what it is sent cannot be read, and does not go round in circles", async () => {
    const { server } = start();
    server.stdin.end(`Content-Length: many\r\n\r\n${"{".repeat(10_000)}\r\n\r\nContent-Length: 5\r\n\r\n{`);
    await once(server, "exit");
  });

  test("answers what comes before it is initialized with a refusal", async () => {
    const { server } = start();
    server.stdin.write(framed({ id: 1, method: "textDocument/hover", params: { ...document, position } }));
    let answer = "";
    while (!answer.includes("}}")) answer += (await once(server.stdout, "data"))[0];
    expect(answer).toContain('"error"');
    server.stdin.end();
    await once(server, "exit");
  });
});
