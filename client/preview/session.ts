// One panel and what it shows: follows the record that is being worked on, asks the server, and hears the page.
import * as vscode from "vscode";
import {
  type Axes,
  type Choice,
  type FromPage,
  fromPageSchema,
  type Look,
  type PictureKind,
  type PreviewState,
  type PreviewView,
  type ToPage,
} from "../../shared/messages/preview.ts";
import { orSaysWhy } from "../or-says-why.ts";
import type { Memory } from "./memory.ts";
import { revealLine } from "./reveal.ts";
import { saveFile } from "./save.ts";
import type { PreviewSource } from "./source.ts";
import { PREVIEW_SETTINGS, usualAxes } from "./usual-axes.ts";

export type FileFormat = Extract<FromPage, { type: "save" }>["format"];

/** What a session needs of its panel. */
export interface Stage {
  readonly post: (message: ToPage) => void;
  readonly isVisible: () => boolean;
  readonly name: (picture: PictureKind, record: string) => void;
}

export interface PreviewSession {
  /** What the page says, as it came. */
  readonly hear: (message: unknown) => void;
  /** Shows a record, and of it what is named. */
  readonly show: (uri: vscode.Uri, choice?: Choice) => void;
  /** What is on show. */
  readonly picture: () => PictureKind;
  readonly togglePin: () => void;
  readonly save: (format: FileFormat) => Promise<void>;
  readonly copy: () => Promise<void>;
  /** The page is gone until it says that it is ready again. */
  readonly hidden: () => void;
  readonly dispose: () => void;
}

/** Between the last key and the question to the server. */
const PAUSE = 80;
/** A change on the disk reaches the server by another way, and a little later. */
const DISK_PAUSE = 400;
/** A picture that the page does not draw by then is given up. */
const LONGEST_DRAWING = 15_000;

export function previewSession(
  stage: Stage,
  source: PreviewSource,
  memory: Memory,
  log: (words: string) => void,
  restored?: PreviewState,
): PreviewSession {
  let uri = restored && vscode.Uri.parse(restored.uri);
  let isPinned = restored?.isPinned ?? false;
  /** The part of the lift axis that is shown of this record. */
  let lifts: PreviewState["lifts"] = restored?.lifts ?? null;
  let look: Look | undefined;
  let view: PreviewView | undefined;
  let turn = 0;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  /** Where the session itself has put the cursor, so that it does not follow its own step. */
  let echo = "";
  let ticket = 0;
  const pictures = new Map<number, (data: string) => void>();
  if (restored !== undefined) memory.choose(restored.uri, restored.choice);
  const axes = (): Axes => memory.axes() ?? usualAxes();

  const key = (): string => uri?.toString() ?? "";
  const choice = (): Choice => memory.choice(key());
  const cursorLine = (): number | null => {
    const editor = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === key());
    return editor?.selection.active.line ?? null;
  };
  const asked = () => ({
    uri: key(),
    line: cursorLine(),
    shown: view?.runs[0]?.id ?? null,
    choice: choice(),
    ...axes(),
    lifts,
  });

  const ask = async (): Promise<void> => {
    clearTimeout(waiting);
    const mine = ++turn;
    if (look === undefined || !stage.isVisible()) return;
    if (uri === undefined) {
      stage.post({ type: "unreadable", text: "Open a record to see its curve." });
      return;
    }
    try {
      const answer = await source.view({ ...asked(), look });
      // A later question is under way, or the page has gone.
      if (mine !== turn || look === undefined) return;
      if ("unreadable" in answer) {
        stage.post({ type: "unreadable", text: `${nameOf(uri)}: ${answer.unreadable}` });
        return;
      }
      view = answer;
      stage.name(answer.shows, answer.name);
      stage.post({
        type: "show",
        state: { uri: key(), isPinned, choice: choice(), ...axes(), lifts },
        view: answer,
      });
      stage.post({ type: "cursor", uri: key(), line: cursorLine() });
    } catch (error) {
      log(`preview: ${error}`);
      if (mine === turn) stage.post({ type: "unreadable", text: "The language server does not answer." });
    }
  };
  const askSoon = (pause: number): void => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, pause);
  };
  const turnTo = (record: vscode.Uri): void => {
    if (record.toString() === key()) return;
    uri = record;
    lifts = null;
    view = undefined;
    ask();
  };

  const follow = (editor: vscode.TextEditor | undefined): void => {
    if (!isPinned && editor?.document.languageId === "headnote") turnTo(editor.document.uri);
  };
  const cursorMoved = ({ textEditor }: vscode.TextEditorSelectionChangeEvent): void => {
    if (textEditor.document.uri.toString() !== key()) return;
    const { line } = textEditor.selection.active;
    stage.post({ type: "cursor", uri: key(), line });
    const isOwn = echo === `${key()}:${line}`;
    echo = "";
    const [run] = view?.runs ?? [];
    const isInside = run?.uri === key() && line >= run.line && line <= run.last;
    if (choice().kind === "cursor" && !isOwn && !isInside) askSoon(PAUSE);
  };
  const reveal = async ({ run, line, focus }: Extract<FromPage, { type: "reveal" }>): Promise<void> => {
    const place = run === null ? undefined : view?.runs.find(({ id }) => id === run);
    if (uri === undefined || (run !== null && place === undefined)) return;
    const file = place === undefined ? uri : vscode.Uri.parse(place.uri);
    const at = line + (place?.line ?? 0);
    echo = `${file}:${at}`;
    await revealLine(file, at, focus);
  };

  const shows = (): PictureKind => view?.shows ?? "curve";
  const drawing = (format: "svg" | "png", spec: Record<string, unknown>): Promise<string> => {
    const mine = ++ticket;
    const { promise, resolve, reject } = Promise.withResolvers<string>();
    const late = setTimeout(() => reject(new Error("the page did not draw it")), LONGEST_DRAWING);
    pictures.set(mine, resolve);
    stage.post({ type: "draw", ticket: mine, format, spec });
    return promise.finally(() => {
      clearTimeout(late);
      pictures.delete(mine);
    });
  };
  const save = async (format: FileFormat): Promise<void> => {
    const isPicture = format === "svg" || format === "png";
    const file = await source.file({ ...asked(), format: isPicture ? "vega-lite" : format });
    if (file === null || uri === undefined) {
      await vscode.window.showInformationMessage("There is no run to save yet.");
      return;
    }
    const text = isPicture ? await drawing(format, JSON.parse(file.text)) : file.text;
    const bytes =
      format === "png"
        ? Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
        : new TextEncoder().encode(text);
    await saveFile(uri, file.name, shows(), format, bytes);
  };
  const copy = async (): Promise<void> => {
    const file = await source.file({ ...asked(), format: "markdown" });
    if (file !== null) await vscode.env.clipboard.writeText(file.text);
  };

  const heard = async (message: FromPage): Promise<unknown> => {
    switch (message.type) {
      case "ready":
      case "look":
        look = message.look;
        return ask();
      case "choose":
        memory.choose(key(), message.choice);
        return ask();
      case "axes":
        memory.chooseAxes(message.axes);
        return ask();
      case "zoom":
        ({ lifts } = message);
        return ask();
      case "reset":
        memory.chooseAxes(undefined);
        lifts = null;
        memory.choose(key(), { kind: "cursor" });
        return ask();
      case "pin":
        isPinned = message.isPinned;
        return ask();
      case "reveal":
        return reveal(message);
      case "save":
        return orSaysWhy(save(message.format));
      case "copy":
        return orSaysWhy(copy());
      case "drawn":
        return pictures.get(message.ticket)?.(message.data);
      case "failed":
        return log(`preview page: ${message.message}`);
      default:
        return message satisfies never;
    }
  };

  const renamed = ({ files }: vscode.FileRenameEvent): void => {
    for (const { oldUri, newUri } of files) {
      const rest = key().slice(oldUri.toString().length);
      if (!key().startsWith(oldUri.toString()) || (rest !== "" && !rest.startsWith("/"))) continue;
      memory.choose(`${newUri}${rest}`, choice());
      turnTo(vscode.Uri.parse(`${newUri}${rest}`));
      return;
    }
  };
  const disk = vscode.workspace.createFileSystemWatcher("**/{*.headnote,headnote.json}");
  const changedOnDisk = (): void => askSoon(DISK_PAUSE);
  const listeners = vscode.Disposable.from(
    disk,
    disk.onDidChange(changedOnDisk),
    disk.onDidCreate(changedOnDisk),
    disk.onDidDelete(changedOnDisk),
    vscode.window.onDidChangeActiveTextEditor(follow),
    vscode.window.onDidChangeTextEditorSelection(cursorMoved),
    // Any record may be one that the shown one includes.
    vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (document.languageId === "headnote" && contentChanges.length > 0) askSoon(PAUSE);
    }),
    vscode.workspace.onDidRenameFiles(renamed),
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(PREVIEW_SETTINGS)) ask();
    }),
  );

  return {
    hear: (message) => {
      const parsed = fromPageSchema.safeParse(message);
      if (!parsed.success) {
        log("preview page: a message that is none");
        return;
      }
      heard(parsed.data).catch((error: unknown) => log(`preview: ${error}`));
    },
    show: (record, chosen) => {
      if (chosen !== undefined) memory.choose(record.toString(), chosen);
      const isShown = record.toString() === key();
      turnTo(record);
      if (isShown) ask();
    },
    picture: shows,
    togglePin: () => {
      isPinned = !isPinned;
      ask();
    },
    save: (format) => orSaysWhy(save(format)),
    copy: () => orSaysWhy(copy()),
    hidden: () => {
      look = undefined;
      turn++;
    },
    dispose: () => {
      clearTimeout(waiting);
      turn++;
      listeners.dispose();
    },
  };
}

function nameOf(uri: vscode.Uri): string {
  return uri.path.split("/").at(-1) ?? "";
}
