// Files that are renamed: before it is done, what leads to them is written anew.
import type { FileOperationOptions, RenameFilesParams, WorkspaceEdit } from "vscode-languageserver";
import { movedFiles } from "../../service/moved-files.ts";
import { guarded } from "../guard.ts";
import { toWorkspaceEdit } from "../to-protocol.ts";
import { pathOf } from "../uris.ts";
import type { Asked } from "./asked.ts";

/** Records, logs, and folders, which may hold either. */
const MOVABLE: FileOperationOptions["willRename"] = {
  filters: [
    { pattern: { glob: "**/*.{headnote,csv}", matches: "file" } },
    { pattern: { glob: "**", matches: "folder" } },
  ],
};

/** What is asked of the client: to say before it renames such a file, and when it has renamed or deleted one. */
export const FILE_OPERATIONS: FileOperationOptions = {
  willRename: MOVABLE,
  didRename: MOVABLE,
  didDelete: MOVABLE,
};

export function registerMoving({ connection, others }: Asked): void {
  connection.workspace.onWillRenameFiles(
    guarded(
      "renamed files",
      connection.console,
      null,
      async ({ files }: RenameFilesParams): Promise<WorkspaceEdit | null> => {
        const moves = files.map(({ oldUri, newUri }) => ({ from: pathOf(oldUri), to: pathOf(newUri) }));
        const edits = movedFiles(await others(), moves);
        return edits.size === 0 ? null : toWorkspaceEdit(edits);
      },
    ),
  );
}
