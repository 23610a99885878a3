// The language server as the rest of the extension knows it: it comes up after activation, and what is asked of it waits.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

export type ServerState = "starting" | "running" | "not running";

export interface Server {
  readonly state: () => ServerState;
  readonly onDidChangeState: vscode.Event<void>;
  /** Waits for a server that is still coming up; fails with `ServerDown` where there will be none. */
  readonly ask: (method: string, params: unknown) => Promise<unknown>;
  /** Ends it, if it runs, and starts it again. */
  readonly restart: () => Promise<void>;
  /** For good; one that is still coming up is stopped as soon as it is up, and one that is not begun never is. */
  readonly stop: () => Promise<void>;
}

export class ServerDown extends Error {
  constructor() {
    super("The language server is not running.");
  }
}

/** `load` brings the client along, which is most of the extension's code, and is not begun before the next turn. */
export function serverBehind(load: () => Promise<BaseLanguageClient>, log: (words: string) => void): Server {
  const changed = new vscode.EventEmitter<void>();
  let client: BaseLanguageClient | undefined;
  let isUpOrComing = true;
  let isOver = false;

  const state = (): ServerState => {
    if (client === undefined) return isUpOrComing ? "starting" : "not running";
    return client.isRunning() ? "running" : client.needsStop() ? "starting" : "not running";
  };
  const start = async (): Promise<void> => {
    if (isOver) return;
    // A client that has failed cannot be started again.
    if (client === undefined || hasFailed(client)) {
      client = await load();
      client.onDidChangeState(() => changed.fire());
    }
    if (!isOver) await client.start();
  };
  const begin = (before: Promise<unknown>): Promise<void> => {
    const begun = before.then(start);
    begun.catch((error: unknown) => {
      isUpOrComing = false;
      log(`the language server did not start: ${error}`);
      changed.fire();
    });
    return begun;
  };
  let up = begin(new Promise((resolve) => setTimeout(resolve, 0)));
  const settled = (): Promise<unknown> => up.catch(() => undefined);

  return {
    state,
    onDidChangeState: changed.event,
    ask: async (method, params) => {
      await settled();
      if (client === undefined || state() === "not running") throw new ServerDown();
      return client.sendRequest(method, params);
    },
    restart: async () => {
      const ended = settled().then(() => (client?.isRunning() ? client.stop() : undefined));
      isUpOrComing = true;
      up = begin(ended);
      await settled();
      if (state() === "not running") throw new ServerDown();
    },
    stop: async () => {
      isOver = true;
      await settled();
      if (client?.isRunning()) await client.dispose();
    },
  };
}

function hasFailed(client: BaseLanguageClient): boolean {
  return !client.isRunning() && !client.needsStop() && !client.needsStart();
}
