// Reads files for the server, so that it works wherever the editor can read: disks, remotes and web hosts.
import * as vscode from "vscode";
import { listFilesParams, type ReadFileAnswer, readFileParams } from "../shared/messages/requests.ts";

const LARGEST = 64 * 1024 * 1024;
const MOST_FILES = 20_000;

const PROBLEMS: Readonly<Record<string, string>> = {
  FileNotFound: "it is not there",
  NoPermissions: "it may not be read",
  FileIsADirectory: "it is a folder",
};

export async function readFile(params: unknown): Promise<ReadFileAnswer> {
  const { uri } = readFileParams.parse(params);
  let bytes: Uint8Array;
  try {
    const place = vscode.Uri.parse(uri, true);
    const { size } = await vscode.workspace.fs.stat(place);
    if (size > LARGEST) return { problem: "it is larger than 64 MB" };
    bytes = await vscode.workspace.fs.readFile(place);
  } catch (error) {
    const code = error instanceof vscode.FileSystemError ? error.code : "";
    return { problem: PROBLEMS[code] ?? "it cannot be read" };
  }
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { problem: "it is not UTF-8 text" };
  }
}

export async function listFiles(params: unknown): Promise<{ uris: string[] }> {
  const { ending } = listFilesParams.parse(params);
  const found = await vscode.workspace.findFiles(`**/*${ending}`, "**/node_modules/**", MOST_FILES);
  return { uris: found.map((uri) => uri.toString()) };
}
