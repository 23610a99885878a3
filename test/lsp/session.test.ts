// Whole conversations between an editor and the server.

import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  DocumentDiagnosticReport,
  Hover,
  WorkspaceEdit,
} from "vscode-languageserver";
import { SHOW_CURVE, SHOW_PLACES, showPlacesArguments } from "../../shared/messages/requests.ts";
import { questions } from "../kit/questions.ts";
import { shopRecord } from "../kit/service.ts";
import { FULL, type Session, session } from "../kit/session.ts";

const URI = "file:///shop/monday.headnote";

async function inSession(
  capabilities: Parameters<typeof session>[0],
  files: Readonly<Record<string, string>>,
  talk: (session: Session) => Promise<void>,
): Promise<void> {
  const opened = await session(capabilities, files);
  try {
    await talk(opened);
  } finally {
    opened.close();
  }
}

const place = (line: number, character: number) => ({
  textDocument: { uri: URI },
  position: { line, character },
});
const codesOf = ({ items }: { items: readonly { code?: unknown }[] }) => items.map(({ code }) => code);
const pull = (asked: Session) =>
  asked.ask<DocumentDiagnosticReport & { items: { code?: unknown }[] }>("textDocument/diagnostic", {
    textDocument: { uri: URI },
  });

describe("findings", () => {
  test("are there for a client that asks for them, and follow what is typed", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, "headnote 1\nbench b\n  settle 1,6 s\n");
      expect(codesOf(await pull(asked))).toEqual(["missing-line", "decimal-comma"]);
      await asked.change(URI, "headnote 1\nbench b\n  shows flow\n");
      expect(codesOf(await pull(asked))).toEqual([]);
    });
  });

  test("are told to a client that cannot ask, with the version they are of, and taken back when it closes the file", async () => {
    await inSession({}, {}, async (asked) => {
      const first = asked.published(URI);
      await asked.open(URI, "headnote 1\nbench b\n");
      expect(await first).toMatchObject({
        version: 1,
        diagnostics: [{ code: "missing-line", source: "headnote" }],
      });
      const second = asked.published(URI);
      await asked.client.sendNotification("textDocument/didClose", { textDocument: { uri: URI } });
      expect((await second).diagnostics).toEqual([]);
    });
  });

  test("see open files before those on the disk, and files on the disk where none is open", async () => {
    const shop = "file:///shop/shop.headnote";
    await inSession(FULL, { [shop]: "headnote 1\n" }, async (asked) => {
      await asked.open(URI, 'headnote 1\ninclude "shop.headnote"\nhead h\n  engine e\n');
      expect(codesOf(await pull(asked))).toEqual(["name-not-found"]);
      await asked.open(shop, "headnote 1\nengine e\n");
      expect(codesOf(await pull(asked))).toEqual([]);
    });
  });

  test("are asked for again by a client that shows another file, and not for what is typed in the only one", async () => {
    await inSession(FULL, {}, async (asked) => {
      let count = 0;
      asked.client.onRequest("workspace/diagnostic/refresh", () => {
        count++;
        return null;
      });
      const settled = async () => {
        for (let round = 0; round < 3; round++) await pull(asked);
        return count;
      };
      await asked.open(URI, "headnote 1\n");
      const before = await settled();
      await asked.change(URI, "headnote 1\nbench b\n");
      expect((await settled()) - before).toBe(0);
      await asked.open("file:///shop/other.headnote", "headnote 1\n");
      await settled();
      const two = count;
      await asked.change(URI, "headnote 1\nbench c\n");
      expect((await settled()) - two).toBe(1);
    });
  });

  test("of the whole workspace come with unchanged ones left out", async () => {
    await inSession(FULL, { [URI]: "headnote 1\nbench b\n" }, async (asked) => {
      type Report = { items: { kind: string; resultId: string; uri: string }[] };
      const first = await asked.ask<Report>("workspace/diagnostic", { previousResultIds: [] });
      expect(first.items).toMatchObject([{ kind: "full", uri: URI, items: [{ code: "missing-line" }] }]);
      const previousResultIds = first.items.map(({ uri, resultId }) => ({ uri, value: resultId }));
      const second = await asked.ask<Report>("workspace/diagnostic", { previousResultIds });
      expect(second.items).toMatchObject([{ kind: "unchanged" }]);
    });
  });

  test("are not raised in old versions that a diff shows, and unsaved files are judged like others", async () => {
    await inSession({}, {}, async (asked) => {
      const old = asked.published("git:/shop/monday.headnote?HEAD");
      await asked.open("git:/shop/monday.headnote?HEAD", "headnote 1\nbench b\n");
      expect((await old).diagnostics).toEqual([]);
      const unsaved = asked.published("untitled:Untitled-1");
      await asked.open("untitled:Untitled-1", "headnote 1\nbench b\n");
      expect((await unsaved).diagnostics).toHaveLength(1);
    });
  });

  test("of a file too large to be judged is one that says so", async () => {
    await inSession(FULL, {}, async (asked) => {
      // 50 MB.
      await asked.open(URI, `headnote 1\n${"# a long record\n".repeat(3_125_000)}`);
      const { items } = await pull(asked);
      expect(items).toMatchObject([{ message: "this file is not judged: it is too large to be judged" }]);
      for (const [method, params] of Object.entries(questions(URI))) await asked.ask(method, params);
    });
  });
});

describe("a client that misbehaves", () => {
  test("gets an answer to nonsense, and the server goes on", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, "headnote 1\n");
      await expect(asked.ask("headnote/nonsense", {})).rejects.toThrow();
      expect(await asked.ask("textDocument/hover", place(900, 900))).toBeNull();
      expect(await asked.ask("headnote/onEnter", { what: 1 })).toBeNull();
      expect(
        await asked.ask("textDocument/completion", {
          textDocument: { uri: "file:///nowhere" },
          position: { line: 0, character: 0 },
        }),
      ).toEqual([]);
      expect(codesOf(await pull(asked))).toEqual([]);
    });
  });

  test("may cancel everything", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, shopRecord("     0.100               28.0       55.0\n"));
      const { CancellationTokenSource } = await import("vscode-languageserver");
      const answers = Array.from({ length: 20 }, () => {
        const source = new CancellationTokenSource();
        const answer = asked.client.sendRequest("textDocument/hover", place(24, 8), source.token);
        source.cancel();
        return answer.then(
          () => "answered",
          () => "refused",
        );
      });
      for (const answer of await Promise.all(answers)) expect(["answered", "refused"]).toContain(answer);
      expect(await asked.ask("textDocument/hover", place(24, 8))).not.toBeNull();
    });
  });
});

describe("files that are renamed", () => {
  const shop = "file:///shop/benches/shop.headnote";
  const record = 'headnote 1\ninclude "benches/shop.headnote"\nhead h\n  engine e\n';

  test("are included by their new names before the editor renames them", async () => {
    await inSession(FULL, { [shop]: "headnote 1\nengine e\n" }, async (asked) => {
      await asked.open(URI, record);
      const renaming = { oldUri: "file:///shop/benches", newUri: "file:///shop/my benches" };
      const edit = await asked.ask<WorkspaceEdit>("workspace/willRenameFiles", { files: [renaming] });
      expect(edit.changes).toEqual({
        [URI]: [
          {
            range: { start: { line: 1, character: 8 }, end: { line: 1, character: 31 } },
            newText: '"my benches/shop.headnote"',
          },
        ],
      });
      const elsewhere = { oldUri: "file:///shop/bench", newUri: "file:///shop/b" };
      expect(await asked.ask("workspace/willRenameFiles", { files: [elsewhere] })).toBeNull();
    });
  });

  test("are no longer there under their old names, with all that was in them", async () => {
    const files: Record<string, string> = { [shop]: "headnote 1\nengine e\n" };
    await inSession(FULL, files, async (asked) => {
      await asked.open(URI, record);
      expect(codesOf(await pull(asked))).toEqual([]);
      asked.remove(shop);
      const renaming = { oldUri: "file:///shop/benches", newUri: "file:///shop/b" };
      await asked.client.sendNotification("workspace/didRenameFiles", { files: [renaming] });
      expect(codesOf(await pull(asked))).toEqual(["missing-include"]);
    });
  });
});

describe("the features reach the client", () => {
  const RECORD = shopRecord(
    "     0.100               28.0       55.0\n     0.200               28.0      109.6\n",
  );

  test("hover, completion, Enter, rename, formatting, outline and tokens", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, RECORD);
      const hover = await asked.ask<Hover>("textDocument/hover", place(24, 8));
      expect(JSON.stringify(hover.contents)).toContain("corrected flow at 28 inH2O");
      const items = await asked.ask<CompletionItem[]>("textDocument/completion", place(17, 18));
      expect(items.map(({ label }) => label)).toContain("inH2O");
      expect(
        await asked.ask("headnote/onEnter", { uri: URI, position: { line: 25, character: 40 } }),
      ).toEqual({ text: "     0.300               28.0  " });
      const edit = await asked.ask<WorkspaceEdit>("textDocument/rename", {
        ...place(2, 7),
        newName: "south",
      });
      expect(edit.changes?.[URI]).toHaveLength(2);
      await expect(asked.ask("textDocument/rename", { ...place(2, 7), newName: "a b" })).rejects.toThrow(
        "cannot be a name",
      );
      expect(await asked.ask("textDocument/formatting", { textDocument: { uri: URI } })).toEqual([]);
      const outline = await asked.ask<{ name: string }[]>("textDocument/documentSymbol", {
        textDocument: { uri: URI },
      });
      expect(outline.map(({ name }) => name)).toEqual(["north", "intake", "session 2026-03-02", "i1"]);
      const { data } = await asked.ask<{ data: number[] }>("textDocument/semanticTokens/full", {
        textDocument: { uri: URI },
      });
      expect(data.length % 5).toBe(0);
      const hints = await asked.ask<{ label: string }[]>("textDocument/inlayHint", {
        textDocument: { uri: URI },
        range: { start: { line: 0, character: 0 }, end: { line: 40, character: 0 } },
      });
      expect(hints.map(({ label }) => label)).toEqual([
        expect.stringMatching(/^54\.2 ± .* cfm$/),
        expect.any(String),
      ]);
    });
  });

  test("gains are over the baseline, also where that stands in an included file", async () => {
    const before = "file:///shop/before.headnote";
    const files = { [before]: shopRecord("     0.100               28.0       55.0\n") };
    await inSession(FULL, files, async (asked) => {
      const session =
        "session 2026-03-09\n  bench north\n  port intake\n  target 28 inH2O\n  entry radiused\n";
      const run = "run i2\n  baseline i1\n  lift[in]  depression[inH2O]  flow[cfm]\n  0.100  28.0  60.5\n";
      await asked.open(
        URI,
        `headnote 1\ninclude "before.headnote"\n${session}  air 71.5 degF 29.18 inHg 42 %RH\n${run}`,
      );
      const hints = await asked.ask<{ label: string }[]>("textDocument/inlayHint", {
        textDocument: { uri: URI },
        range: { start: { line: 0, character: 0 }, end: { line: 40, character: 0 } },
      });
      expect(hints.map(({ label }) => label)).toEqual([expect.stringMatching(/cfm {2}\+1\d\.\d %$/)]);
    });
  });

  test("lenses run the commands that the client has, and lead to the baseline's file", async () => {
    const before = "file:///shop/before.headnote";
    const files = { [before]: shopRecord("     0.100               28.0       55.0\n") };
    const record = 'headnote 1\ninclude "before.headnote"\nrun i2\n  baseline i1\n';
    type Lenses = { command: { title: string; command: string; arguments: unknown[] } }[];
    const lenses = async (commands: readonly string[]) => {
      const asked = await session(FULL, files, "disk", commands);
      await asked.open(URI, record);
      const found = await asked.ask<Lenses>("textDocument/codeLens", { textDocument: { uri: URI } });
      asked.close();
      return { announced: asked.announced.codeLensProvider, found: found.map(({ command }) => command) };
    };
    expect(await lenses([])).toEqual({ announced: undefined, found: [] });
    const { announced, found } = await lenses([SHOW_CURVE, SHOW_PLACES]);
    expect(announced).toBeDefined();
    expect(found).toMatchObject([
      { title: "Show curve", command: SHOW_CURVE, arguments: [URI, "i2"] },
      { title: "Baseline i1 (not comparable)", command: SHOW_PLACES },
    ]);
    const places = showPlacesArguments.parse(found[1]?.arguments);
    expect(places[2]).toEqual([{ uri: before, position: { line: 22, character: 0 } }]);
    expect((await lenses([SHOW_PLACES])).found).toMatchObject([{ command: SHOW_PLACES }]);
  });

  test("lenses can be switched off, and are asked for again when they are", async () => {
    const refreshed = { workspace: { codeLens: { refreshSupport: true } } };
    const asked = await session(refreshed, {}, "disk", [SHOW_CURVE]);
    const again = new Promise((resolve) =>
      asked.client.onRequest("workspace/codeLens/refresh", () => resolve(null)),
    );
    await asked.open(URI, shopRecord(""));
    const lenses = () => asked.ask<unknown[]>("textDocument/codeLens", { textDocument: { uri: URI } });
    expect(await lenses()).toHaveLength(1);
    const settings = { headnote: { codeLens: { enabled: false } } };
    await asked.client.sendNotification("workspace/didChangeConfiguration", { settings });
    await again;
    expect(await lenses()).toEqual([]);
    asked.close();
  });

  test.each(["disk", "client"] as const)("the columns of a log are read through the %s", async (through) => {
    const files = { "file:///shop/traces/one.csv": "t,dp\n0,1\n1,2\n" };
    const asked = await session(FULL, files, through);
    await asked.open(URI, 'headnote 1\nrun a\ntrace 0.3 in of a\n  log "traces/one.csv" time ""\n');
    const labels = async (character: number) =>
      (await asked.ask<CompletionItem[]>("textDocument/completion", place(3, character))).map(
        ({ label }) => label,
      );
    expect(await labels(29)).toEqual(["t", "dp"]);
    expect(await labels(7)).toEqual(["traces/one.csv"]);
    asked.close();
  });

  test("a name of a record that is not included comes with its include", async () => {
    const shop = { "/shop/shop.headnote": "headnote 1\nbench north\n  shows flow\n" };
    await inSession(FULL, shop, async (asked) => {
      await asked.open(URI, "headnote 1\nsession 2026-03-02\n  bench \n");
      const items = await asked.ask<CompletionItem[]>("textDocument/completion", place(2, 8));
      const at = { line: 0, character: 10 };
      expect(items).toMatchObject([
        {
          label: "north",
          additionalTextEdits: [{ range: { start: at, end: at }, newText: '\ninclude "shop.headnote"' }],
        },
      ]);
    });
  });

  test("a completion puts the cursor where typing goes on, in editors that know how", async () => {
    const completion = { completionItem: { snippetSupport: true } };
    for (const textDocument of [{}, { completion }]) {
      await inSession({ textDocument }, {}, async (asked) => {
        await asked.open(URI, shopRecord("     0.100  28.0  55.0  \n"));
        const items = await asked.ask<CompletionItem[]>("textDocument/completion", place(24, 24));
        const inserted = "completion" in textDocument ? 'void "$1"' : 'void ""';
        expect(items.map(({ textEdit }) => textEdit?.newText)).toEqual([inserted]);
      });
    }
  });

  test("references follow a bench's range from its line into the rows; highlight keeps to the file", async () => {
    const shop = "file:///shop/shop.headnote";
    const bench = "headnote 1\nbench b\n  shows percent\n  range low 90 cfm at 28 inH2O\n";
    const record = 'headnote 1\ninclude "shop.headnote"\nsession 2026-03-02\n  bench b\n';
    const rows =
      "run r\n  lift[in]  depression[inH2O]  reading[%]  range\n  0.1  28  40  low\n  0.2  28  70  low\n";
    await inSession(FULL, { [shop]: bench }, async (asked) => {
      await asked.open(URI, record + rows);
      const where = { ...place(6, 17), context: { includeDeclaration: true } };
      const found = await asked.ask<{ uri: string }[]>("textDocument/references", where);
      expect(found.map(({ uri }) => uri).sort()).toEqual([URI, URI, shop]);
      const marked = await asked.ask<unknown[]>("textDocument/documentHighlight", place(6, 17));
      expect(marked).toHaveLength(2);
    });
  });

  test("a quick fix mends what is underlined", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, "headnote 1\nplate p\n  diameter 2,500 in\n");
      const range = { start: { line: 2, character: 12 }, end: { line: 2, character: 12 } };
      const actions = await asked.ask<{ title: string; edit: WorkspaceEdit }[]>("textDocument/codeAction", {
        textDocument: { uri: URI },
        range,
        context: { diagnostics: [] },
      });
      expect(actions.map(({ title }) => title)).toEqual(["Write 2.500", "Allow decimal-comma here"]);
    });
  });

  test("only the kinds of actions come that are asked for", async () => {
    await inSession(FULL, {}, async (asked) => {
      await asked.open(URI, "headnote 1\nplate p\n  diameter 2,5 in\n");
      const kinds = async (...only: readonly string[]) => {
        const actions = await asked.ask<CodeAction[]>("textDocument/codeAction", {
          textDocument: { uri: URI },
          range: { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } },
          context: { diagnostics: [], only },
        });
        return [...new Set(actions.map(({ kind }) => kind))];
      };
      expect(await kinds()).toEqual(["quickfix"]);
      expect(await kinds("quickfix")).toEqual(["quickfix"]);
      for (const all of ["source", "source.fixAll", "source.fixAll.headnote"])
        expect(await kinds(all)).toEqual(["source.fixAll.headnote"]);
      for (const other of ["source.organizeImports", "source.fixAll.other", "refactor"])
        expect(await kinds(other)).toEqual([]);
      expect(await kinds("refactor", "source", "quickfix")).toEqual(["source.fixAll.headnote", "quickfix"]);
    });
  });

  test("a name that another record defines is offered with its include", async () => {
    await inSession(FULL, { "file:///shop/engines/e.headnote": "headnote 1\nengine e\n" }, async (asked) => {
      await asked.open(URI, "headnote 1\nhead h\n  engine e\n");
      const actions = await asked.ask<CodeAction[]>("textDocument/codeAction", {
        textDocument: { uri: URI },
        range: { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } },
        context: { diagnostics: [] },
      });
      const [include] = actions.filter(({ title }) => title === 'Add include "engines/e.headnote"');
      expect(include?.edit?.changes?.[URI]).toHaveLength(1);
    });
  });
});

test("two questions at once both wait for files that come through the client", async () => {
  const shop = "file:///shop/shop.headnote";
  const [bench = "", rest = ""] = shopRecord("     0.100  28.0  55.0\n").split("\nsession ");
  const asked = await session(FULL, { [shop]: bench }, "client");
  try {
    await asked.open(URI, `headnote 1\ninclude "shop.headnote"\nsession ${rest}`);
    const range = { start: { line: 0, character: 0 }, end: { line: 40, character: 0 } };
    const hints = () => asked.ask<unknown[]>("textDocument/inlayHint", { textDocument: { uri: URI }, range });
    const [report, found] = await Promise.all([pull(asked), hints()]);
    expect(codesOf(report)).toEqual([]);
    expect(found).toHaveLength(1);
  } finally {
    asked.close();
  }
});
