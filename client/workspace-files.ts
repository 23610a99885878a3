// Reads files for the server, so that it works wherever the editor can read: disks, remotes and web hosts.
import * as vscode from "vscode";
import { type ReadFileAnswer, readFileParams } from "../shared/messages/requests.ts";

const LARGEST = 64 * 1024 * 1024;
const MOST_FILES = 20_000;

export async function readFile(params: unknown): Promise<ReadFileAnswer> {
  const { uri } = readFileParams.parse(params);
  try {
    const place = vscode.Uri.parse(uri, true);
    const { size } = await vscode.workspace.fs.stat(place);
    if (size > LARGEST) return { problem: "it is larger than 64 MB" };
    return { text: new TextDecoder().decode(await vscode.workspace.fs.readFile(place)) };
  } catch {
    return { problem: "it is not there" };
  }
}

export async function listFiles(): Promise<{ uris: string[] }> {
  const found = await vscode.workspace.findFiles("**/*.headnote", "**/node_modules/**", MOST_FILES);
  return { uris: found.map((uri) => uri.toString()) };
}
