// What the extension's commands do in an editor, seen through an editor made for it.
import { beforeEach, describe, expect, test, vi } from "vitest";
import { registerCheckTask } from "../../client/check-task.ts";
import { checkWorkspace } from "../../client/commands/check-workspace.ts";
import { compareWithHead } from "../../client/commands/compare-with-head.ts";
import { newSession } from "../../client/commands/new-session.ts";
import { showPlaces } from "../../client/commands/show-places.ts";
import type { Server } from "../../client/server.ts";
import type { NamesAnswer } from "../../shared/messages/requests.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

const SHOP = "file:///shop/shop.headnote";
const HEAD = "file:///shop/a114/head.headnote";

/** A server that knows a shop. */
function server(names: NamesAnswer): Server {
  return { ask: async () => names } as unknown as Server;
}

const KNOWN: NamesAnswer = {
  benches: [{ id: "north", uri: SHOP }],
  ports: [{ id: "intake", uri: HEAD }],
  stages: ["as cast"],
};

function answers(...picks: readonly (string | undefined)[]): void {
  for (const pick of picks) editor.window.showQuickPick.mockResolvedValueOnce(pick);
}

function inFolder(): void {
  editor.workspace.workspaceFolders = [{ uri: editor.Uri.parse("file:///shop") }];
}

/** The document that was opened, and the place of the cursor in it. */
function opened() {
  const [document, options] = editor.window.showTextDocument.mock.calls[0] ?? [];
  return { uri: String(document?.uri), text: document?.getText() ?? "", cursor: options?.selection.end };
}

describe("a new session", () => {
  test("lies beside its port, takes in what it names, and waits for the first lift", async () => {
    inFolder();
    answers("north", "intake", "as cast");
    await newSession(server(KNOWN));
    const { uri, text, cursor } = opened();
    expect(uri).toMatch(/^file:\/\/\/shop\/a114\/\d{4}-\d\d-\d\d-as-cast\.headnote$/);
    expect(text).toContain('include "../shop.headnote"\ninclude "head.headnote"\n');
    expect(text).toMatch(/^session \d{4}-\d\d-\d\d$/m);
    expect(cursor).toEqual({ line: text.split("\n").length - 1, character: 2 });
    expect(text.split("\n").at(-2)).toContain("lift[in]");
  });

  test("never takes the place of another file", async () => {
    inFolder();
    for (const ending of ["", "-2"]) {
      editor.window.showTextDocument.mockClear();
      answers("north", "intake", "as cast");
      await newSession(server(KNOWN));
      expect(opened().uri).toMatch(new RegExp(`-as-cast${ending}\\.headnote$`));
    }
    expect(editor.state.files.size).toBe(2);
  });

  test("is not saved yet where there is no folder, or none that can be written", async () => {
    for (const prepare of [() => undefined, inFolder]) {
      editor.reset();
      prepare();
      editor.state.isWritable = false;
      answers("north", "intake", "as cast");
      await newSession(server(KNOWN));
      expect(opened().uri).toContain("untitled:");
      expect(opened().text).toContain("  bench      north\n");
    }
  });

  test("is not begun when a question is left unanswered", async () => {
    inFolder();
    for (const picks of [[undefined], ["north", undefined], ["north", "intake", undefined]]) {
      answers(...picks);
      await newSession(server(KNOWN));
    }
    expect(editor.window.showTextDocument).not.toHaveBeenCalled();
    expect(editor.state.files.size).toBe(0);
  });

  test("takes names that nobody has used yet, if a record can hold them", async () => {
    editor.window.showInputBox
      .mockResolvedValueOnce("b1")
      .mockResolvedValueOnce("p1")
      .mockResolvedValueOnce("x");
    await newSession(server({ benches: [], ports: [], stages: [] }));
    expect(opened().text).toContain("  bench      b1\n  port       p1\n");
    const [bench, , stage] = editor.window.showInputBox.mock.calls.map(([options]) => options.validateInput);
    expect(["b1", "a.b-c_d", "", "two words", "#1"].map((typed) => bench?.(typed) === undefined)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(["as cast", " "].map((typed) => stage?.(typed) === undefined)).toEqual([true, false]);
  });
});

describe("comparing with what was committed", () => {
  const git = (getAPI: () => unknown) =>
    editor.extensions.getExtension.mockReturnValue({ activate: async () => ({ getAPI }) });
  const toGitUri = (uri: editor.Uri, ref: string) => `${ref}:${uri.path}`;

  function inRecord(): void {
    editor.window.activeTextEditor = { document: editor.textDocument(editor.Uri.parse(SHOP), "") };
  }

  test("opens both side by side", async () => {
    inRecord();
    git(() => ({ getRepository: () => ({}), toGitUri }));
    await compareWithHead();
    expect(editor.commands.executeCommand.mock.calls).toEqual([
      ["vscode.diff", "HEAD:/shop/shop.headnote", editor.Uri.parse(SHOP), "shop.headnote (HEAD ↔ now)"],
    ]);
  });

  test("says so where git is missing, switched off, or does not hold the record", async () => {
    inRecord();
    const off = () => {
      throw new Error("Git model not found");
    };
    for (const prepare of [
      () => editor.extensions.getExtension.mockReturnValue(undefined),
      () => git(off),
      () => git(() => ({ getRepository: () => null, toGitUri })),
    ]) {
      prepare();
      await compareWithHead();
    }
    expect(editor.window.showInformationMessage).toHaveBeenCalledTimes(3);
    expect(editor.commands.executeCommand).not.toHaveBeenCalled();
  });

  test("does nothing without a record", async () => {
    await compareWithHead();
    expect(editor.window.showInformationMessage).not.toHaveBeenCalled();
  });
});

describe("checking all records", () => {
  const PROBLEMS = [["workbench.actions.view.problems"]];

  test("runs the command over the folder, and fetches nothing for it", async () => {
    inFolder();
    registerCheckTask();
    await checkWorkspace();
    const [task] = editor.tasks.executeTask.mock.calls[0] ?? [];
    expect(task?.execution.commandLine).toBe("npx --no-install headnote check --color never");
    expect(task?.problemMatchers).toBe("$headnote");
  });

  test("shows what the server found where no program may run", async () => {
    inFolder();
    await checkWorkspace();
    expect(editor.commands.executeCommand.mock.calls).toEqual(PROBLEMS);
    editor.reset();
    registerCheckTask();
    editor.workspace.workspaceFolders = [{ uri: editor.Uri.parse("memory:/shop") }];
    await checkWorkspace();
    expect(editor.commands.executeCommand.mock.calls).toEqual(PROBLEMS);
    editor.commands.executeCommand.mockClear();
    inFolder();
    editor.workspace.isTrusted = false;
    await checkWorkspace();
    expect(editor.commands.executeCommand.mock.calls).toEqual(PROBLEMS);
    expect(editor.tasks.executeTask).not.toHaveBeenCalled();
  });

  test("is the same from a tasks file, whose words are kept", () => {
    registerCheckTask();
    const definition = { type: "headnote", note: "mine" };
    const scope = { uri: editor.Uri.parse("file:///shop") };
    const [provider] = editor.state.taskProviders;
    expect(provider?.resolveTask({ definition, scope })).toMatchObject({ definition, scope });
    expect(provider?.resolveTask({ definition, scope: 2 })).toBeUndefined();
  });
});

describe("places that a lens leads to", () => {
  test("are shown below it", async () => {
    const position = { line: 3, character: 0 };
    await showPlaces(HEAD, position, [{ uri: SHOP, position: { line: 7, character: 0 } }]);
    const [command, uri, at, places, how] = editor.commands.executeCommand.mock.calls[0] ?? [];
    expect([command, String(uri), at, how]).toEqual(["editor.action.peekLocations", HEAD, position, "peek"]);
    expect(places).toEqual([{ uri: editor.Uri.parse(SHOP), position: { line: 7, character: 0 } }]);
  });

  test("are not looked for where nonsense is asked", async () => {
    await showPlaces(1, "two");
    expect(editor.commands.executeCommand).not.toHaveBeenCalled();
  });
});
