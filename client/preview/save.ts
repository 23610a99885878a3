// Writes what the preview shows where a person says.
import * as vscode from "vscode";
import type { PictureKind } from "../../shared/messages/preview.ts";
import { capital } from "./capital.ts";

const ENDINGS: Readonly<Record<string, readonly [ending: string, words: string]>> = {
  svg: ["svg", "SVG picture"],
  png: ["png", "PNG picture"],
  csv: ["csv", "CSV table"],
  "vega-lite": ["vl.json", "Vega-Lite chart"],
};

/** Asks where, beside the record to begin with, and writes; says what went wrong, since somebody waits for the file. */
export async function saveFile(
  record: vscode.Uri,
  name: string,
  picture: PictureKind,
  format: string,
  bytes: Uint8Array,
): Promise<void> {
  const [ending, words] = ENDINGS[format] ?? [format, format];
  const file = `${name}.${ending}`;
  const folder =
    record.scheme === "untitled"
      ? vscode.workspace.workspaceFolders?.[0]?.uri
      : vscode.Uri.joinPath(record, "..");
  const place = await vscode.window.showSaveDialog({
    ...(folder !== undefined && { defaultUri: vscode.Uri.joinPath(folder, file) }),
    filters: { [words]: [ending.split(".").at(-1) ?? ending] },
    title: `Save ${capital(picture)}`,
  });
  if (place === undefined) return;
  try {
    await vscode.workspace.fs.writeFile(place, bytes);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    await vscode.window.showErrorMessage(`The ${picture} could not be written: ${reason}`);
  }
}
