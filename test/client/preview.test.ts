// The panel beside the text, in an editor made for it: what it follows, asks, shows, and does when its page speaks.
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { ExtensionContext } from "vscode";
import { registerPreview } from "../../client/preview/panel.ts";
import { type Server, ServerDown } from "../../client/server.ts";
import {
  type FromPage,
  type PreviewParams,
  type PreviewState,
  type PreviewView,
  previewStateSchema,
  type ToPage,
} from "../../shared/messages/preview.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

const LOOK = {
  width: 800,
  colours: { kind: "dark", background: "#000", text: "#fff", font: "" },
} as const;
const READY: FromPage = { type: "ready", look: LOOK };
const A = "file:///shop/a.headnote";
const B = "file:///shop/b.headnote";

/** A run on lines 3 to 9, and its baseline in another file. */
function view(uri: string, version = 1): PreviewView {
  return {
    version,
    name: uri.split("/").at(-1) ?? "",
    picks: [],
    runs: [
      { id: "i1", uri, line: 3, last: 9 },
      { id: "base", uri: B, line: 20, last: 29 },
    ],
    shows: "curve",
    hasRatio: true,
    units: [],
    lifts: null,
    spec: {},
    problem: null,
    isBroken: false,
    summary: [],
    facts: [],
    findings: [],
    moreFindings: 0,
    tables: [],
  };
}

/** Memory of a workspace, a server, and an editor with record A in it. */
function started(answer: (params: PreviewParams) => unknown = ({ uri }) => view(uri), isUp = true) {
  const asked: PreviewParams[] = [];
  const logged: string[] = [];
  const kept = new Map<string, unknown>();
  const server = {
    ask: async (method: string, params: PreviewParams) => {
      if (method === "headnote/previewFile") {
        if (!isUp) throw new ServerDown();
        return { name: "a-i1", text: '{"text":"it"}' };
      }
      asked.push(params);
      return answer(params);
    },
  };
  const context = {
    extensionUri: editor.Uri.parse("file:///extension"),
    workspaceState: {
      get: (key: string) => kept.get(key),
      update: (key: string, value: unknown) => kept.set(key, structuredClone(value)),
    },
  };
  const registered = registerPreview(
    context as unknown as ExtensionContext,
    server as unknown as Server,
    (words) => logged.push(words),
  );
  const run = (id: string, ...args: readonly unknown[]) =>
    (editor.state.commands.get(id) as (...given: readonly unknown[]) => unknown)(...args);
  return { asked, logged, kept, run, registered, context, server };
}

function openRecord(uri: string, line = 0) {
  const text = Array.from({ length: 40 }, (_, index) => `  line ${index}`).join("\n");
  const shown = editor.textEditor(editor.textDocument(editor.Uri.parse(uri), text), line);
  editor.window.visibleTextEditors = [shown];
  editor.window.activeTextEditor = shown;
  return shown;
}

/** The panel that the editor made last. */
function panel(): editor.FakePanel {
  const made = editor.window.createWebviewPanel.mock.results.at(-1)?.value;
  if (made === undefined) throw new Error("no panel was made");
  return made;
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const later = () => new Promise((resolve) => setTimeout(resolve, 120));
const posted = (of = panel()) => of.webview.posted as unknown as ToPage[];
const shown = (of = panel()) => posted(of).filter((message) => message.type === "show");
const types = (of = panel()) => posted(of).map(({ type }) => type);

async function opened(...given: Parameters<typeof started>) {
  const bench = started(...given);
  openRecord(A, 4);
  bench.run("headnote.showCurve");
  panel().webview.says(READY);
  await settled();
  return bench;
}

beforeEach(editor.reset);

describe("the panel", () => {
  test("opens beside the text without taking the keyboard, and shows nothing before its page is ready", async () => {
    const { run, asked } = started();
    openRecord(A);
    run("headnote.showCurve");
    await settled();
    const [, , place] = editor.window.createWebviewPanel.mock.calls[0] ?? [];
    expect(place).toEqual({ viewColumn: editor.ViewColumn.Beside, preserveFocus: true });
    expect([asked.length, posted().length]).toEqual([0, 0]);
    panel().webview.says(READY);
    await settled();
    expect(types()).toEqual(["show", "cursor"]);
    expect(panel().title).toBe("Curve: a.headnote");
  });

  test("is one: asked for again it comes to the front and shows the record that is asked for", async () => {
    const { run, asked } = await opened();
    run("headnote.showCurve", editor.Uri.parse(B), "i2");
    await settled();
    expect(editor.window.createWebviewPanel).toHaveBeenCalledTimes(1);
    expect(panel().reveal).toHaveBeenLastCalledWith(undefined, true);
    expect(asked.at(-1)).toMatchObject({ uri: B, choice: { kind: "run", id: "i2" } });
    run("headnote.showCurve", A);
    await settled();
    expect(asked.at(-1)).toMatchObject({ uri: A, choice: { kind: "cursor" } });
  });

  test("shows a trace, a ladder or a map that is asked for, and remembers it of the record", async () => {
    const { run, asked } = await opened();
    const choice = { kind: "block", id: "trace 0.500 in of i2" };
    run("headnote.showCurve", editor.Uri.parse(B), null, choice.id);
    await settled();
    expect(asked.at(-1)).toMatchObject({ uri: B, choice });
    run("headnote.showCurve", A);
    await settled();
    run("headnote.showCurve", B);
    await settled();
    expect(asked.at(-1)).toMatchObject({ uri: B, choice });
  });

  test("is called by what it shows, and so is what is saved of it", async () => {
    const { run } = await opened(({ uri }) => ({ ...view(uri), shows: "trace" }));
    expect(panel().title).toBe("Trace: a.headnote");
    editor.window.showQuickPick.mockResolvedValueOnce("csv");
    editor.window.showSaveDialog.mockResolvedValueOnce(editor.Uri.parse(B));
    editor.state.isWritable = false;
    await run("headnote.saveCurve");
    expect(editor.window.showQuickPick.mock.calls[0]).toMatchObject([{}, { title: "Save Trace As" }]);
    expect(editor.window.showSaveDialog.mock.calls[0]?.[0]).toMatchObject({ title: "Save Trace" });
    expect(editor.window.showErrorMessage.mock.calls[0]?.[0]).toContain("The trace could not be written");
  });

  test("lets in its own script, style and folder, and nothing else", async () => {
    await opened();
    const { html, options } = panel().webview;
    const policy = /content="(default-src[^"]+)"/.exec(html)?.[1] ?? "";
    const nonce = /<script nonce="([0-9a-f]{32})"/.exec(html)?.[1];
    expect(policy.split("; ")).toEqual([
      "default-src 'none'",
      `script-src 'nonce-${nonce}'`,
      "style-src https://source",
      "img-src data: blob:",
      "font-src https://source",
    ]);
    expect(options).toMatchObject({ localResourceRoots: [{ path: "/extension/dist/preview" }] });
    expect(options).not.toHaveProperty("retainContextWhenHidden");
    expect(html).not.toMatch(/ on[a-z]+=|style="|unsafe/);
  });

  test("follows the record that is worked on, and stays where it is pinned", async () => {
    const { asked, run } = await opened();
    const turn = async (uri: string, languageId = "headnote") => {
      const other = openRecord(uri);
      editor.events.activeEditor.fire({ ...other, document: { ...other.document, languageId } });
      await settled();
      return asked.at(-1)?.uri;
    };
    expect(await turn(B)).toBe(B);
    expect(await turn("file:///shop/notes.txt", "plaintext")).toBe(B);
    editor.events.activeEditor.fire(undefined);
    run("headnote.pinPreview");
    await settled();
    expect(shown().at(-1)?.state.isPinned).toBe(true);
    expect(await turn(A)).toBe(B);
    panel().webview.says({ type: "pin", isPinned: false });
    expect(await turn(A)).toBe(A);
  });

  test("asks again once after a burst of keys, and answers that come late are dropped", async () => {
    const answers: ((view: PreviewView) => void)[] = [];
    const { asked } = await opened(
      ({ uri }) => new Promise((resolve) => answers.push((given) => resolve(given ?? view(uri)))),
    );
    expect(asked.length).toBe(1);
    const { document } = openRecord(A);
    for (let key = 0; key < 5; key++) {
      for (const hear of editor.state.changed) hear({ document, contentChanges: [{}] });
    }
    await later();
    expect(asked.length).toBe(2);
    answers[1]?.(view(A, 9));
    await settled();
    answers[0]?.(view(A, 1));
    await settled();
    expect(shown().map((message) => message.view.version)).toEqual([9]);
  });

  test("sends anew what a hidden page has lost, and nothing while it is hidden", async () => {
    const { asked } = await opened();
    panel().turn(false);
    const { document } = openRecord(A);
    for (const hear of editor.state.changed) hear({ document, contentChanges: [{}] });
    await later();
    expect(asked.length).toBe(1);
    panel().turn(true);
    panel().webview.says(READY);
    await settled();
    expect(shown().length).toBe(2);
  });

  test("comes back after a reload with what it showed", async () => {
    const { kept } = started();
    const state: PreviewState = {
      uri: B,
      isPinned: true,
      choice: { kind: "all" },
      axis: "lift-ratio",
      cd: "gap",
      units: ["mm"],
      lifts: [0.004, 0.008],
    };
    kept.set("headnote.preview.axes", { axis: "lift-ratio", cd: "gap", units: ["mm"] });
    const [serializer] = editor.state.serializers;
    const back = editor.fakePanel();
    await serializer?.deserializeWebviewPanel(back, state);
    back.webview.says(READY);
    await settled();
    expect(shown(back).at(-1)?.state).toEqual(state);
    expect(back.webview.options).toMatchObject({ enableScripts: true });
  });

  test("comes back also with a state that is none, and then shows the open record", async () => {
    started();
    openRecord(A);
    for (const state of [undefined, 7, { uri: 3 }, { uri: B, isPinned: "yes" }]) {
      const back = editor.fakePanel();
      await editor.state.serializers[0]?.deserializeWebviewPanel(back, state);
      back.webview.says(READY);
      await settled();
      expect(shown(back).at(-1)?.state).toMatchObject({ uri: A, isPinned: false });
    }
  });

  test("goes with its file's new name, also where the folder is renamed", async () => {
    const { asked } = await opened();
    const rename = async (from: string, to: string) => {
      const [oldUri, newUri] = [from, to].map(editor.Uri.parse);
      editor.events.renamed.fire({ files: [{ oldUri, newUri }] });
      await settled();
      return asked.at(-1)?.uri;
    };
    expect(await rename("file:///shop/a.head", "file:///x")).toBe(A);
    expect(await rename(A, "file:///shop/c.headnote")).toBe("file:///shop/c.headnote");
    expect(await rename("file:///shop", "file:///barn")).toBe("file:///barn/c.headnote");
  });

  test("says that a deleted record cannot be read, and shows it again when it is back", async () => {
    let isThere = true;
    await opened(({ uri }) => (isThere ? view(uri) : { unreadable: "it is not there" }));
    isThere = false;
    editor.events.disk.fire(editor.Uri.parse(A));
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(posted().at(-1)).toEqual({ type: "unreadable", text: "a.headnote: it is not there" });
    isThere = true;
    editor.events.disk.fire(editor.Uri.parse(A));
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(types().slice(-2)).toEqual(["show", "cursor"]);
  });

  test("says so when the server fails or answers nonsense", async () => {
    for (const answer of [() => Promise.reject(new Error("gone")), () => ({ version: "x" }), () => null]) {
      editor.reset();
      const { logged } = await opened(answer);
      expect(posted().at(-1)).toEqual({ type: "unreadable", text: "The language server does not answer." });
      expect(logged.length).toBe(1);
    }
  });

  test("hears nothing any more once it is closed", async () => {
    const { asked, registered } = await opened();
    panel().dispose();
    const { document } = openRecord(A);
    editor.events.activeEditor.fire(openRecord(B));
    editor.events.selection.fire({ textEditor: { document, selection: { active: { line: 30 } } } });
    await later();
    expect(asked.length).toBe(1);
    registered.dispose();
  });
});

describe("cursor and point", () => {
  const move = (line: number, uri = A) => {
    const textEditor = openRecord(uri, line);
    editor.events.selection.fire({ textEditor });
  };

  test("the cursor's line goes to the page, and another run is asked for only where it is left", async () => {
    const { asked } = await opened();
    move(7);
    expect(posted().at(-1)).toEqual({ type: "cursor", uri: A, line: 7 });
    await later();
    expect(asked.length).toBe(1);
    move(15);
    await later();
    expect(asked.at(-1)).toMatchObject({ line: 15, shown: "i1" });
    expect(asked.length).toBe(2);
    move(1, B);
    await later();
    expect(asked.length).toBe(2);
  });

  test("a point leads to its line, in the file of its run, without the keyboard", async () => {
    await opened();
    const at = openRecord(A, 0);
    panel().webview.says({ type: "reveal", run: "i1", line: 4, focus: false });
    await settled();
    expect(at.selection.active).toMatchObject({ line: 7, character: 2 });
    expect(at.revealRange.mock.calls[0]?.[1]).toBe(editor.TextEditorRevealType.InCenterIfOutsideViewport);
    expect(editor.window.showTextDocument).not.toHaveBeenCalled();
    const other = openRecord(B, 0);
    panel().webview.says({ type: "reveal", run: "base", line: 2, focus: false });
    await settled();
    expect(other.selection.active.line).toBe(22);
  });

  test("the step that a click made is not followed, so that the picture does not jump", async () => {
    const { asked } = await opened();
    openRecord(A, 0);
    panel().webview.says({ type: "reveal", run: null, line: 15, focus: false });
    await settled();
    move(15);
    await later();
    expect(asked.length).toBe(1);
    expect(posted().at(-1)).toEqual({ type: "cursor", uri: A, line: 15 });
    move(16);
    await later();
    expect(asked.length).toBe(2);
  });

  test("Enter takes the keyboard along; lines behind the end and runs that are none do no harm", async () => {
    const { logged } = await opened();
    const at = openRecord(A, 0);
    editor.window.showTextDocument.mockResolvedValue(at as never);
    panel().webview.says({ type: "reveal", run: null, line: 10_000, focus: true });
    await settled();
    expect(at.selection.active.line).toBe(39);
    expect(editor.window.showTextDocument.mock.calls[0]?.[1]).toMatchObject({ preserveFocus: false });
    panel().webview.says({ type: "reveal", run: "x", line: 1, focus: false });
    await settled();
    expect(at.selection.active.line).toBe(39);
    expect(logged).toEqual([]);
  });
});

describe("what was chosen", () => {
  const AXES = { axis: "lift-ratio", cd: "throat", units: ["mm", "L/s"] } as const;
  const ask: FromPage = { type: "axes", axes: { ...AXES, units: [...AXES.units] } };

  /** The panel in another window of the same workspace, or after it was closed. */
  async function reopened({ context, server, run }: Awaited<ReturnType<typeof opened>>) {
    panel().dispose();
    registerPreview(context as unknown as ExtensionContext, server as unknown as Server, () => undefined);
    openRecord(A);
    run("headnote.showCurve");
    panel().webview.says(READY);
    await settled();
  }

  test("is remembered: runs for each record, axes and units for the workspace, also of a closed panel", async () => {
    const bench = await opened();
    const { asked } = bench;
    panel().webview.says({ type: "choose", choice: { kind: "all" } });
    panel().webview.says(ask);
    await settled();
    expect(asked.at(-1)).toMatchObject({ choice: { kind: "all" }, ...AXES });
    expect(shown().at(-1)?.state).toMatchObject(AXES);
    editor.events.activeEditor.fire(openRecord(B));
    await settled();
    expect(asked.at(-1)).toMatchObject({ uri: B, choice: { kind: "cursor" }, ...AXES });
    await reopened(bench);
    expect(asked.at(-1)).toMatchObject({ uri: A, choice: { kind: "all" }, ...AXES });
  });

  test("is forgotten when it is reset; then the settings say what is usual, as they change", async () => {
    editor.state.settings = { axis: "lift-ratio", cd: "gap", units: ["kPa"] };
    const bench = await opened();
    const { asked } = bench;
    expect(asked.at(-1)).toMatchObject({ axis: "lift-ratio", cd: "gap", units: ["kPa"] });
    panel().webview.says({ type: "choose", choice: { kind: "all" } });
    panel().webview.says(ask);
    panel().webview.says({ type: "reset" });
    await settled();
    const usual = { choice: { kind: "cursor" }, axis: "lift-ratio", cd: "gap", units: ["kPa"] };
    expect(asked.at(-1)).toMatchObject(usual);
    editor.state.settings = { axis: "sideways", cd: 7, units: ["furlong"] };
    editor.events.settings.fire({ affectsConfiguration: (section) => section === "headnote.preview" });
    await settled();
    expect(asked.at(-1)).toMatchObject({ axis: "lift", cd: "curtain", units: [] });
    const before = asked.length;
    editor.events.settings.fire({ affectsConfiguration: () => false });
    await settled();
    expect(asked.length).toBe(before);
  });

  test("as a part of the lift axis holds for the record that is shown", async () => {
    const { asked } = await opened();
    const zoomed = async (lifts: [number, number] | null) => {
      panel().webview.says({ type: "zoom", lifts });
      await settled();
      return asked.at(-1)?.lifts;
    };
    expect(await zoomed([0.004, 0.008])).toEqual([0.004, 0.008]);
    expect(shown().at(-1)?.state.lifts).toEqual([0.004, 0.008]);
    panel().webview.says(ask);
    await settled();
    expect(asked.at(-1)?.lifts).toEqual([0.004, 0.008]);
    editor.events.activeEditor.fire(openRecord(B));
    await settled();
    expect(asked.at(-1)).toMatchObject({ uri: B, lifts: null });
    await zoomed([0, 0.001]);
    panel().webview.says({ type: "reset" });
    await settled();
    expect(asked.at(-1)?.lifts).toBeNull();
  });

  test("in a memory that holds nonsense is what is usual", async () => {
    const bench = await opened();
    bench.kept.set("headnote.preview.choices", [["x", { kind: "every" }], 3]);
    bench.kept.set("headnote.preview.axes", { axis: "lift", cd: "curtain", units: ["furlong"] });
    await reopened(bench);
    expect(bench.asked.at(-1)).toMatchObject({ choice: { kind: "cursor" }, axis: "lift", units: [] });
  });

  test("by a panel of a version that had neither units nor a stretch is still read", () => {
    const old = {
      uri: A,
      isPinned: false,
      choice: { kind: "all" },
      axis: "lift",
      cd: "gap",
    };
    expect(previewStateSchema.parse(old)).toEqual({ ...old, units: [], lifts: null });
  });
});

describe("saving", () => {
  const place = editor.Uri.parse("file:///shop/out");
  const written = () => new TextDecoder().decode(editor.state.files.get(String(place)));

  test("writes a table where a person says, under a name made from the run", async () => {
    await opened();
    editor.window.showSaveDialog.mockResolvedValueOnce(place);
    panel().webview.says({ type: "save", format: "csv" });
    await settled();
    expect(editor.window.showSaveDialog.mock.calls[0]?.[0]).toMatchObject({
      defaultUri: { path: "/shop/a-i1.csv" },
    });
    expect(written()).toBe('{"text":"it"}');
  });

  test("has the page draw pictures, and takes only the one that it asked for", async () => {
    await opened();
    editor.window.showSaveDialog.mockResolvedValue(place);
    panel().webview.says({ type: "save", format: "svg" });
    await settled();
    const asked = posted().at(-1);
    expect(asked).toMatchObject({ type: "draw", format: "svg", spec: { text: "it" } });
    const ticket = asked?.type === "draw" ? asked.ticket : 0;
    panel().webview.says({ type: "drawn", ticket: ticket + 1, data: "another" });
    panel().webview.says({ type: "drawn", ticket, data: "<svg/>" });
    await settled();
    expect(written()).toBe("<svg/>");
    panel().webview.says({ type: "save", format: "png" });
    await settled();
    panel().webview.says({ type: "drawn", ticket: ticket + 1, data: btoa("PNG") });
    await settled();
    expect(written()).toBe("PNG");
  });

  test("writes nothing where nobody says where, and says what kept it from writing", async () => {
    await opened();
    panel().webview.says({ type: "save", format: "csv" });
    await settled();
    expect(editor.state.files.size).toBe(0);
    editor.state.isWritable = false;
    editor.window.showSaveDialog.mockResolvedValueOnce(place);
    panel().webview.says({ type: "save", format: "csv" });
    await settled();
    expect(editor.window.showErrorMessage.mock.calls[0]?.[0]).toContain("could not be written");
  });

  test("says so where there is no server to ask, to a command and to the page alike", async () => {
    const { run, logged } = await opened(undefined, false);
    editor.window.showQuickPick.mockResolvedValueOnce("csv");
    await run("headnote.saveCurve");
    await run("headnote.copyResults");
    panel().webview.says({ type: "save", format: "csv" });
    panel().webview.says({ type: "copy" });
    await settled();
    const said = editor.window.showErrorMessage.mock.calls.map(([message]) => message);
    expect(said).toEqual(Array.from({ length: 4 }, () => "The language server is not running."));
    expect(logged).toEqual([]);
  });

  test("is in the palette too, and so is the table for the clipboard", async () => {
    const { run } = await opened();
    editor.window.showQuickPick.mockResolvedValueOnce("csv");
    editor.window.showSaveDialog.mockResolvedValueOnce(place);
    await run("headnote.saveCurve");
    expect(written()).toBe('{"text":"it"}');
    await run("headnote.copyResults");
    expect(editor.env.clipboard.writeText).toHaveBeenCalledWith('{"text":"it"}');
  });
});

test("a page that speaks nonsense is not listened to", async () => {
  const { asked, logged } = await opened();
  const nonsense = [
    undefined,
    7,
    {},
    { type: "reveal" },
    { type: "reveal", run: null, line: -1, focus: false },
    { type: "reveal", run: null, line: 1.5, focus: false },
    { type: "ready", look: { ...LOOK, width: 1e9 } },
    { type: "look", look: { ...LOOK, colours: { ...LOOK.colours, font: "x".repeat(5000) } } },
    { type: "save", format: "../x" },
    { type: "choose", choice: { kind: "run" } },
    { type: "zoom", lifts: [0.008, 0.004] },
    { type: "axes", axes: { axis: "lift", cd: "curtain", units: ["furlong"] } },
    { ...READY, extra: 1 },
    { type: "run", command: "x" },
  ];
  for (const message of nonsense) panel().webview.says(message);
  await later();
  expect(asked.length).toBe(1);
  expect(logged.length).toBe(nonsense.length);
  expect(editor.state.files.size).toBe(0);
});
