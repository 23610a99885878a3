// The extension's manifest against what is there: the files, commands, settings and lines that it speaks of.
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { ExtensionContext } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { deactivate, start } from "../../client/extension.ts";
import type { ClientParts } from "../../client/language-client.ts";
import { PREVIEW_SETTINGS, usualAxes } from "../../client/preview/usual-axes.ts";
import manifest from "../../package.json" with { type: "json" };
import { readSettings } from "../../server/lsp/settings.ts";
import { TOKEN_TYPES } from "../../server/service/semantic-tokens.ts";
import { axesSchema, OFFERED_UNITS } from "../../shared/messages/preview.ts";
import { inShop } from "../kit/command.ts";
import { packedFiles } from "../kit/packed-files.ts";
import * as editor from "./fake-vscode.ts";

vi.mock("vscode", () => import("./fake-vscode.ts"));

beforeEach(editor.reset);

const { contributes } = manifest;
const packed = packedFiles();

/** Every text in a value that is a path into the project. */
function pathsIn(value: unknown): readonly string[] {
  if (typeof value === "string") return /^(\.\/)?(client|grammar|dist)\//.test(value) ? [value] : [];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(pathsIn) : [];
}

describe("the package", () => {
  test("has every file that the manifest names", () => {
    const { main, browser, icon } = manifest;
    const named = pathsIn({ main, browser, icon, contributes }).map((path) => path.replace("./", ""));
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((path) => !packed.includes(path))).toEqual([]);
    expect(packed).toEqual(expect.arrayContaining(["dist/node-client.cjs", "dist/server.js", "LICENSE"]));
  });

  test("has entries that are no ES modules, which editors do not load everywhere", () => {
    expect([manifest.main, manifest.browser].filter((entry) => !entry.endsWith(".cjs"))).toEqual([]);
  });

  test("has nothing else: no sources, tests, records or packages", () => {
    const isExpected = (path: string) =>
      /^(dist\/(web\/)?extension\.cjs|dist\/node-client\.cjs|dist\/server\.js|dist\/preview\/page\.(js|css)|client\/media\/[a-z-]+\.png|grammar\/.+\.json)$/.test(
        path,
      ) ||
      ["package.json", "README.md", "LICENSE", "client/CHANGELOG.md", "grammar/REFERENCE.md"].includes(path);
    expect(packed.filter((path) => !isExpected(path))).toEqual([]);
  });
});

describe("the extension", () => {
  const turn = () => new Promise((resolve) => setTimeout(resolve, 5));

  /** Starts it with a client that comes, or does not. */
  function started(client: () => Promise<unknown>) {
    const subscriptions: { dispose?: unknown }[] = [];
    const load = vi.fn((_parts: ClientParts) => client() as Promise<BaseLanguageClient>);
    const extensionUri = editor.Uri.parse("file:///extension");
    const workspaceState = { get: () => undefined };
    start({ subscriptions, extensionUri, workspaceState } as unknown as ExtensionContext, load);
    return { load, subscriptions };
  }

  test("has every command of the manifest, and the manifest every one of its", async () => {
    const { load } = started(() => new Promise(() => undefined));
    await turn();
    const commands = contributes.commands.map(({ command }) => command);
    const { lensCommands = [] } = load.mock.calls[0]?.[0] ?? {};
    expect(lensCommands.length).toBeGreaterThan(0);
    // A lens hands its command what nobody could type, so that such a command stands in no menu unless it has one too.
    const expected = new Set([...commands, ...lensCommands]);
    expect([...editor.state.commands.keys()].sort()).toEqual([...expected].sort());
  });

  test("has all in place before its client is even loaded", async () => {
    const { load, subscriptions } = started(() => new Promise(() => undefined));
    expect(load).not.toHaveBeenCalled();
    expect(editor.state.commands.size).toBeGreaterThan(0);
    expect(editor.statusItem.text).toBe("starting");
    expect(subscriptions.length).toBeGreaterThan(0);
    await turn();
    expect(Object.keys(load.mock.calls[0]?.[0].answers ?? {})).toEqual([
      "headnote/readFile",
      "headnote/listFiles",
    ]);
  });

  test("lives on, with the reason in its log and a word in its status, when the client cannot be loaded", async () => {
    started(() => Promise.reject(new Error("no such file")));
    await turn();
    expect(editor.log.error.mock.calls[0]?.[0]).toContain("no such file");
    expect(editor.statusItem.text).toBe("not running");
    expect(editor.state.commands.has("headnote.restartServer")).toBe(true);
  });

  test("takes its server down with it", async () => {
    const dispose = vi.fn(async () => undefined);
    const isRunning = () => true;
    started(async () => ({
      start: async () => undefined,
      onDidChangeState: () => undefined,
      isRunning,
      dispose,
    }));
    await turn();
    await deactivate();
    expect(dispose).toHaveBeenCalledTimes(1);
  });
});

describe("settings", () => {
  const settings = contributes.configuration.flatMap(({ properties }) => Object.entries(properties));

  test("have the defaults that the server has for what nobody set", () => {
    const { hints, lenses, mostFindings } = readSettings(undefined);
    const defaults = Object.fromEntries(settings.map(([name, setting]) => [name, setting.default]));
    expect(defaults).toEqual({
      "headnote.hints.flow": hints.flow,
      "headnote.hints.gain": hints.gain,
      "headnote.hints.cd": hints.cd,
      "headnote.codeLens.enabled": lenses,
      "headnote.findings.limit": mostFindings,
      "headnote.preview.axis": usualAxes().axis,
      "headnote.preview.cd": usualAxes().cd,
      "headnote.preview.units": usualAxes().units,
      "headnote.enter.continueTable": true,
      "headnote.trace.server": "off",
    });
  });

  test("of the curve offer what it can be asked for", () => {
    const offered = (name: string) =>
      settings.flatMap(([each, setting]) => {
        if (each !== `${PREVIEW_SETTINGS}.${name}`) return [];
        return "items" in setting ? setting.items.enum : "enum" in setting ? setting.enum : [];
      });
    const { axis, cd } = axesSchema.shape;
    expect(offered("axis")).toEqual(axis.options);
    expect(offered("cd")).toEqual(cd.options);
    expect(offered("units")).toEqual(Object.values(OFFERED_UNITS).flat());
  });

  test("have an order and a sentence each", () => {
    for (const [name, setting] of settings) {
      const sentence = "description" in setting ? setting.description : setting.markdownDescription;
      expect([name, sentence]).toEqual([name, expect.stringMatching(/^[A-Z].*\.$/)]);
      expect([name, typeof setting.order]).toEqual([name, "number"]);
    }
  });
});

describe("menus and colours", () => {
  test("are there for records only; a session can be started anywhere", () => {
    const items = Object.entries(contributes.menus).flatMap(([menu, entries]) =>
      entries.map((entry) => [menu, "when" in entry ? entry.when : ""] as const),
    );
    const unscoped = items.filter(([, when]) => !/(editorLangId|resourceLangId) == headnote/.test(when));
    expect(unscoped.map(([menu]) => menu)).toEqual(["file/newFile"]);
  });

  test("know every kind of token", () => {
    const own = Object.keys(contributes.semanticTokenScopes[0]?.scopes ?? {});
    // Themes know these two by themselves.
    expect(TOKEN_TYPES.filter((type) => !own.includes(type))).toEqual(["string", "comment"]);
  });
});

describe("the problem matcher", () => {
  const [matcher] = contributes.problemMatchers;
  const line = new RegExp(matcher?.pattern.regexp ?? "");

  test("reads every finding that the command prints, and nothing else", async () => {
    const record = "headnote 1\nbench b\n  settle 1,6 s\nengine e\n  bore 101 mm\n# allow no-such: here\n";
    await inShop({ "a b/c.headnote": record }, async ({ headnote }) => {
      const { findings } = JSON.parse((await headnote(["check", "--format", "json"])).out);
      const { out } = await headnote(["check", "--color", "never"]);
      const read = out.split("\n").flatMap((printed) => {
        const [all, file, at, column, severity, code, message] = line.exec(printed) ?? [];
        return all === undefined
          ? []
          : [{ file, at: Number(at), column: Number(column), severity, code, message }];
      });
      expect(read.length).toBeGreaterThan(1);
      expect(read).toEqual(
        findings.map((each: Record<"file" | "severity" | "code" | "message" | "range", unknown>) => {
          const { start } = each.range as { start: { line: number; column: number } };
          const { file, severity, code, message } = each;
          return { file, at: start.line, column: start.column, severity, code, message };
        }),
      );
    });
  });
});
