// A language server as a process, asked over its standard input and output the way an editor asks it.
import { type ChildProcess, spawn } from "node:child_process";
import { performance } from "node:perf_hooks";
import {
  createProtocolConnection,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";

/** A server, and a text of its language. */
export interface Candidate {
  readonly name: string;
  readonly args: readonly string[];
  readonly language: string;
  readonly uri: string;
  readonly text: string;
  /** The line that is typed in, from 0, and where in it a digit stands. */
  readonly line: number;
  readonly digit: number;
}

/** What is timed. */
export type Work = "edit to findings" | "completion after an edit" | "hover";

export interface TimedServer {
  readonly name: string;
  /** Does the work once; ms from the first byte sent to the answer read. */
  readonly time: (work: Work) => Promise<number>;
  /** How many findings it told of last. */
  readonly findings: () => number;
  readonly stop: () => Promise<void>;
}

interface Report {
  readonly items: readonly unknown[];
}

export interface StartedServer {
  readonly connection: ProtocolConnection;
  /** Whether it is asked for findings, rather than telling of them. */
  readonly pulls: boolean;
  readonly stop: () => Promise<void>;
}

/** Starts a server in a process, for a folder or for none. */
export async function startServer(args: readonly string[], folder?: string): Promise<StartedServer> {
  const child = spawn(process.execPath, args, { stdio: ["pipe", "pipe", "inherit"] });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  connection.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) => items.map(() => null));
  connection.onRequest("client/registerCapability", () => null);
  connection.onRequest("workspace/diagnostic/refresh", () => null);
  connection.listen();
  const { capabilities } = await connection.sendRequest<{ capabilities: { diagnosticProvider?: unknown } }>(
    "initialize",
    {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: folder === undefined ? null : [{ uri: folder, name: "timed" }],
      capabilities: {
        textDocument: { diagnostic: {}, publishDiagnostics: { versionSupport: true } },
        workspace: { diagnostics: { refreshSupport: true }, configuration: true },
      },
    },
  );
  await connection.sendNotification("initialized", {});
  const pulls = capabilities.diagnosticProvider !== undefined;
  return { connection, pulls, stop: () => end(connection, child) };
}

/** Starts a server, opens the text and waits for its first findings. */
export async function timedServer(candidate: Candidate): Promise<TimedServer> {
  const { name, args, language: languageId, uri, text, line, digit } = candidate;
  const { connection, pulls, stop } = await startServer(args);
  let told: ((count: number) => void) | undefined;
  connection.onNotification("textDocument/publishDiagnostics", (params: { diagnostics: unknown[] }) =>
    told?.(params.diagnostics.length),
  );
  let version = 1;
  let count = 0;
  const findings = async (cause: () => Promise<void>): Promise<void> => {
    if (pulls) {
      await cause();
      const report = await connection.sendRequest<Report>("textDocument/diagnostic", {
        textDocument: { uri },
      });
      count = report.items.length;
      return;
    }
    const published = new Promise<number>((resolve) => {
      told = resolve;
    });
    await cause();
    count = await published;
  };
  const type = (): Promise<void> => {
    version++;
    const range = { start: { line, character: digit }, end: { line, character: digit + 1 } };
    const contentChanges = [{ range, text: String(version % 10) }];
    return connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges,
    });
  };
  const ask = (method: string) =>
    connection.sendRequest(method, { textDocument: { uri }, position: { line, character: digit } });
  await findings(() =>
    connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId, version, text },
    }),
  );
  const works: Readonly<Record<Work, () => Promise<unknown>>> = {
    "edit to findings": () => findings(type),
    "completion after an edit": () => type().then(() => ask("textDocument/completion")),
    hover: () => ask("textDocument/hover"),
  };
  return {
    name,
    findings: () => count,
    time: async (work) => {
      const start = performance.now();
      await works[work]();
      return performance.now() - start;
    },
    stop,
  };
}

async function end(connection: ProtocolConnection, child: ChildProcess): Promise<void> {
  const ended = new Promise((resolve) => child.once("exit", resolve));
  await connection.sendRequest("shutdown");
  await connection.sendNotification("exit");
  await ended;
  connection.dispose();
}
