// The panel beside the text: one at a time, opened without taking the keyboard, and brought back after a reload.
import * as vscode from "vscode";
import {
  type Choice,
  FILE_FORMATS,
  type PreviewState,
  previewStateSchema,
} from "../../shared/messages/preview.ts";
import { SHOW_CURVE } from "../../shared/messages/requests.ts";
import type { Server } from "../server.ts";
import { capital } from "./capital.ts";
import { memoryIn } from "./memory.ts";
import { pageHtml } from "./page-html.ts";
import { type PreviewSession, previewSession } from "./session.ts";
import { previewSource } from "./source.ts";

const PANEL = "headnote.preview";

/** Registers the panel's commands and its way back after a reload. */
export function registerPreview(
  context: vscode.ExtensionContext,
  server: Server,
  log: (words: string) => void,
): vscode.Disposable {
  const folder = vscode.Uri.joinPath(context.extensionUri, "dist/preview");
  const source = previewSource(server);
  const memory = memoryIn(context.workspaceState);
  let open: { readonly panel: vscode.WebviewPanel; readonly session: PreviewSession } | undefined;

  const settle = (panel: vscode.WebviewPanel, restored?: PreviewState): PreviewSession => {
    open?.panel.dispose();
    const { webview } = panel;
    const session = previewSession(
      {
        post: (message) => webview.postMessage(message),
        isVisible: () => panel.visible,
        name: (picture, record) => {
          panel.title = `${capital(picture)}: ${record}`;
        },
      },
      source,
      memory,
      log,
      restored,
    );
    webview.onDidReceiveMessage(session.hear);
    panel.onDidChangeViewState(() => {
      if (!panel.visible) session.hidden();
    });
    panel.onDidDispose(() => {
      session.dispose();
      if (open?.panel === panel) open = undefined;
    });
    webview.options = { enableScripts: true, localResourceRoots: [folder] };
    webview.html = pageHtml({
      script: String(webview.asWebviewUri(vscode.Uri.joinPath(folder, "page.js"))),
      style: String(webview.asWebviewUri(vscode.Uri.joinPath(folder, "page.css"))),
      source: webview.cspSource,
      nonce: newNonce(),
    });
    open = { panel, session };
    return session;
  };

  const showCurve = (uri?: unknown, run?: unknown, block?: unknown): PreviewSession | undefined => {
    const record = uriFrom(uri) ?? activeRecord();
    if (record === undefined) return open?.session;
    const session = open?.session ?? settle(newPanel());
    open?.panel.reveal(undefined, true);
    session.show(record, choiceFrom(run, block));
    return session;
  };
  const saveCurve = async (): Promise<void> => {
    const session = showCurve();
    const title = `Save ${capital(session?.picture() ?? "curve")} As`;
    const format = session && (await vscode.window.showQuickPick(FILE_FORMATS, { title }));
    const known = FILE_FORMATS.find((each) => each === format);
    if (known !== undefined) await session?.save(known);
  };
  const commands: Readonly<Record<string, (...args: readonly unknown[]) => unknown>> = {
    [SHOW_CURVE]: (uri, run, block) => {
      showCurve(uri, run, block);
    },
    "headnote.pinPreview": () => open?.session.togglePin(),
    "headnote.saveCurve": saveCurve,
    "headnote.copyResults": () => showCurve()?.copy(),
  };
  return vscode.Disposable.from(
    ...Object.entries(commands).map(([id, run]) => vscode.commands.registerCommand(id, run)),
    vscode.window.registerWebviewPanelSerializer(PANEL, {
      deserializeWebviewPanel: async (panel, state) => {
        const restored = previewStateSchema.safeParse(state);
        const session = settle(panel, restored.success ? restored.data : undefined);
        const record = activeRecord();
        if (!restored.success && record !== undefined) session.show(record);
      },
    }),
    { dispose: () => open?.panel.dispose() },
  );
}

function newPanel(): vscode.WebviewPanel {
  const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  return vscode.window.createWebviewPanel(PANEL, "Curve", place, { enableFindWidget: true });
}

/** Commands come with a URI, or its text, or nothing that is one. */
function uriFrom(given: unknown): vscode.Uri | undefined {
  if (given instanceof vscode.Uri) return given;
  return typeof given === "string" ? vscode.Uri.parse(given) : undefined;
}

/** Commands come with a run, or with a trace, ladder or map, or with neither. */
function choiceFrom(run: unknown, block: unknown): Choice | undefined {
  if (typeof run === "string") return { kind: "run", id: run };
  return typeof block === "string" ? { kind: "block", id: block } : undefined;
}

function activeRecord(): vscode.Uri | undefined {
  const editors = [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors];
  return editors.find((editor) => editor?.document.languageId === "headnote")?.document.uri;
}

function newNonce(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");
}
