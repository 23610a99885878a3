// Asks for bench, port and stage, and opens a new session with the cursor at its first lift.
import * as vscode from "vscode";
import { NAMES, type NamesAnswer, namesAnswer } from "../../shared/messages/requests.ts";
import type { Server } from "../server.ts";
import { pathFrom, type SessionChoice, sessionFileName, sessionSkeleton } from "../session-skeleton.ts";

const OTHER = "Another one…";

export async function newSession(server: Server): Promise<void> {
  const open = vscode.window.activeTextEditor?.document;
  const record = open?.languageId === "headnote" ? open : undefined;
  const answer = await server.ask(NAMES, { uri: record?.uri.toString() ?? "" });
  const { benches, ports, stages } = namesAnswer.parse(answer);
  const bench = await choose("Bench", idsOf(benches), notAnId);
  const port = bench === undefined ? undefined : await choose("Port", idsOf(ports), notAnId);
  const stage = port === undefined ? undefined : await choose("Stage", stages, notAText);
  if (bench === undefined || port === undefined || stage === undefined) return;
  const benchFile = fileOf(benches, bench);
  const portFile = fileOf(ports, port);
  const folder = folderFor(portFile ?? record?.uri);
  const files = folder === undefined ? [] : [benchFile, portFile].filter((file) => file !== undefined);
  const includes = new Set(files.map((file) => pathFrom(folder?.path ?? "", file.path)));
  const choice: SessionChoice = { date: today(), bench, port, stage, includes: [...includes] };
  const text = sessionSkeleton(choice, record?.getText() ?? "");
  const document = await create(folder, sessionFileName(choice), text);
  const end = document.lineAt(document.lineCount - 1).range.end;
  await vscode.window.showTextDocument(document, { selection: new vscode.Range(end, end) });
}

/** One of the known names, or a new one; `problem` says what is wrong with that. */
async function choose(
  what: string,
  known: readonly string[],
  problem: (typed: string) => string | undefined,
): Promise<string | undefined> {
  const title = `New Session: ${what}`;
  const picked = known.length === 0 ? OTHER : await vscode.window.showQuickPick([...known, OTHER], { title });
  return picked === OTHER ? vscode.window.showInputBox({ title, validateInput: problem }) : picked;
}

function notAnId(typed: string): string | undefined {
  const isId = /^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(typed);
  return isId ? undefined : "Letters, digits, and . _ - between them.";
}

function notAText(typed: string): string | undefined {
  return typed.trim() === "" ? "A few words, such as: as cast." : undefined;
}

type KnownNames = NamesAnswer["benches"];

function idsOf(names: KnownNames): readonly string[] {
  return names.map(({ id }) => id);
}

/** The file that defines a name, so that the new one can take it in. */
function fileOf(names: KnownNames, chosen: string): vscode.Uri | undefined {
  const uri = names.find(({ id }) => id === chosen)?.uri;
  return uri === undefined ? undefined : vscode.Uri.parse(uri);
}

/** The folder of a file of the workspace, else the workspace's first; a session lies beside what it is about. */
function folderFor(file: vscode.Uri | undefined): vscode.Uri | undefined {
  const isInWorkspace = file !== undefined && vscode.workspace.getWorkspaceFolder(file) !== undefined;
  return isInWorkspace ? vscode.Uri.joinPath(file, "..") : vscode.workspace.workspaceFolders?.[0]?.uri;
}

/** A new file that takes no other's place; without a folder, or where nothing can be written, one that is not saved yet. */
async function create(
  folder: vscode.Uri | undefined,
  name: string,
  text: string,
): Promise<vscode.TextDocument> {
  const place = folder && (await freePlace(folder, name));
  const edit = new vscode.WorkspaceEdit();
  if (place !== undefined) edit.createFile(place, { contents: new TextEncoder().encode(text) });
  const isCreated = place !== undefined && (await vscode.workspace.applyEdit(edit));
  return isCreated
    ? vscode.workspace.openTextDocument(place)
    : vscode.workspace.openTextDocument({ language: "headnote", content: text });
}

async function freePlace(folder: vscode.Uri, name: string): Promise<vscode.Uri> {
  for (let count = 1; ; count++) {
    const place = vscode.Uri.joinPath(folder, `${name}${count === 1 ? "" : `-${count}`}.headnote`);
    try {
      await vscode.workspace.fs.stat(place);
    } catch {
      return place;
    }
  }
}

function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
