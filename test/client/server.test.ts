// The server behind the extension: what is asked of it early, late and in vain.
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { orSaysWhy } from "../../client/or-says-why.ts";
import { type Server, ServerDown, type ServerState, serverBehind } from "../../client/server.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

type Phase = "initial" | "starting" | "running" | "failed" | "stopped";

/** As much of the library's client as it takes, with the library's habits: one that failed to start never starts again. */
function fakeClient(comesUp: () => Promise<void> = async () => undefined) {
  let phase: Phase = "initial";
  const changed = new editor.EventEmitter<void>();
  const calls: string[] = [];
  const turnTo = (next: Phase): void => {
    phase = next;
    changed.fire();
  };
  const end = (how: string) => async () => {
    calls.push(how);
    if (phase !== "running") throw new Error(`cannot ${how} what is ${phase}`);
    turnTo("stopped");
  };
  const client = {
    onDidChangeState: changed.event,
    isRunning: () => phase === "running",
    needsStop: () => phase === "running" || phase === "starting",
    needsStart: () => phase === "initial" || phase === "stopped",
    start: async () => {
      calls.push("start");
      if (phase === "failed") throw new Error("failed before");
      turnTo("starting");
      try {
        await comesUp();
        turnTo("running");
      } catch (error) {
        turnTo("failed");
        throw error;
      }
    },
    stop: end("stop"),
    dispose: end("dispose"),
    sendRequest: async (method: string, params: unknown) => {
      if (phase !== "running") throw new Error(`asked while ${phase}`);
      return [method, params];
    },
  };
  return { client: client as unknown as BaseLanguageClient, calls, crash: () => turnTo("stopped") };
}

/** A server whose clients are loaded one after the other. */
function behind(...loads: readonly (() => Promise<BaseLanguageClient>)[]) {
  const load = vi.fn((): Promise<BaseLanguageClient> => {
    const next = loads[load.mock.calls.length - 1];
    return next?.() ?? Promise.reject(new Error("no client is left"));
  });
  const log = vi.fn((_words: string) => undefined);
  const server = serverBehind(load, log);
  const states: ServerState[] = [];
  server.onDidChangeState(() => states.push(server.state()));
  return { server, load, log, states };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 5));
const broken = () => Promise.reject(new Error("no such file"));

async function checkAnswers(server: Server): Promise<void> {
  expect(await server.ask("headnote/names", { uri: "" })).toEqual(["headnote/names", { uri: "" }]);
}

describe("a server that comes up", () => {
  test("is not begun before the next turn, and then tells how it fares", async () => {
    const { client } = fakeClient();
    const { server, load, states } = behind(async () => client);
    await Promise.resolve();
    expect(load).not.toHaveBeenCalled();
    expect(server.state()).toBe("starting");
    await turn();
    expect(states).toEqual(["starting", "running"]);
  });

  test("answers what it was asked before its client was loaded, and before that was up", async () => {
    const loaded = Promise.withResolvers<BaseLanguageClient>();
    const up = Promise.withResolvers<void>();
    const { client } = fakeClient(() => up.promise);
    const { server } = behind(() => loaded.promise);
    const early = checkAnswers(server);
    await turn();
    loaded.resolve(client);
    await turn();
    const late = checkAnswers(server);
    up.resolve();
    await Promise.all([early, late]);
  });

  test("is ended and started again where that is asked for, and answers what is asked meanwhile", async () => {
    const { client, calls } = fakeClient();
    const { server, load } = behind(async () => client);
    const again = server.restart();
    await checkAnswers(server);
    await again;
    expect(calls).toEqual(["start", "stop", "start"]);
    expect(load).toHaveBeenCalledTimes(1);
  });

  test("is started again after a crash without being ended", async () => {
    const { client, calls, crash } = fakeClient();
    const { server, states } = behind(async () => client);
    await turn();
    crash();
    expect(states.at(-1)).toBe("not running");
    await expect(server.ask("x", {})).rejects.toThrow(ServerDown);
    await server.restart();
    expect(calls).toEqual(["start", "start"]);
    await checkAnswers(server);
  });
});

describe("a server that does not come up", () => {
  test("says so to the log and to who asks, whether its client is missing or fails", async () => {
    const { client } = fakeClient(broken);
    for (const loaded of [broken, async () => client]) {
      const { server, log, states } = behind(loaded);
      const early = expect(server.ask("x", {})).rejects.toThrow(ServerDown);
      await turn();
      await early;
      expect(log.mock.calls).toEqual([["the language server did not start: Error: no such file"]]);
      expect(states.at(-1)).toBe("not running");
      await expect(server.ask("x", {})).rejects.toThrow(ServerDown);
    }
  });

  test("comes up by a new client, once what kept it from that is mended", async () => {
    const { client: failing } = fakeClient(broken);
    const { client } = fakeClient();
    const { server, load, states } = behind(
      broken,
      async () => failing,
      async () => client,
    );
    await turn();
    await expect(server.restart()).rejects.toThrow(ServerDown);
    await server.restart();
    expect(load).toHaveBeenCalledTimes(3);
    expect(states.at(-1)).toBe("running");
    await checkAnswers(server);
  });

  test("is told to a person who asked for it, with the ways on from there", async () => {
    editor.window.showErrorMessage.mockResolvedValueOnce("Show Log").mockResolvedValueOnce(undefined);
    await orSaysWhy(Promise.reject(new ServerDown()));
    await orSaysWhy(Promise.reject(new ServerDown()));
    await turn();
    expect(editor.window.showErrorMessage.mock.calls).toEqual(
      Array.from({ length: 2 }, () => ["The language server is not running.", "Show Log", "Start Again"]),
    );
    expect(editor.commands.executeCommand.mock.calls).toEqual([["headnote.showLog"]]);
    await expect(orSaysWhy(broken())).rejects.toThrow("no such file");
  });
});

describe("a server that is stopped for good", () => {
  test("is never begun where it was not yet, loaded or not", async () => {
    const { client, calls } = fakeClient();
    const { server, load } = behind(async () => client);
    await server.stop();
    await turn();
    expect(load).not.toHaveBeenCalled();
    const loaded = Promise.withResolvers<BaseLanguageClient>();
    const { server: loading } = behind(() => loaded.promise);
    await turn();
    const stopped = loading.stop();
    loaded.resolve(client);
    await stopped;
    expect(calls).toEqual([]);
  });

  test("ends as soon as it is up where it was coming up, and at once where it ran", async () => {
    const up = Promise.withResolvers<void>();
    const { client, calls } = fakeClient(() => up.promise);
    const { server } = behind(async () => client);
    await turn();
    const stopped = server.stop();
    expect(calls).toEqual(["start"]);
    up.resolve();
    await stopped;
    expect(calls).toEqual(["start", "dispose"]);
  });

  test("leaves one alone that failed", async () => {
    const { client, calls } = fakeClient(broken);
    const { server } = behind(async () => client);
    await turn();
    await server.stop();
    expect(calls).toEqual(["start"]);
  });
});
