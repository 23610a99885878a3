// Answers what a client asks for its preview.
import type { Connection } from "vscode-languageserver";
import {
  PREVIEW,
  PREVIEW_FILE,
  type PreviewFileAnswer,
  type PreviewView,
  previewFileParams,
  previewParams,
} from "../../../shared/messages/preview.ts";
import type { ChartedRecord } from "../../service/chart-runs.ts";
import { previewView } from "../../service/preview.ts";
import { previewFile } from "../../service/preview-file.ts";
import { guarded } from "../guard.ts";
import { pathOf, uriOf } from "../uris.ts";
import type { WorkspaceService } from "../workspace-service.ts";

/** Why a record cannot be shown, in words that go before nothing. */
type Unreadable = { readonly unreadable: string };

/** `version` is that of the document as it is open here, -1 where it is not. */
export function registerPreview(
  connection: Connection,
  { check, service }: WorkspaceService,
  version: (path: string) => number,
): void {
  const open = async (path: string): Promise<ChartedRecord | Unreadable> => {
    const checked = await check(path);
    return "problem" in checked
      ? { unreadable: checked.problem }
      : { analysis: checked.analysis, findings: checked.findings, service };
  };
  const failed: Unreadable = { unreadable: "the preview failed; the log says why" };
  connection.onRequest<PreviewView | Unreadable, void>(
    PREVIEW,
    guarded<unknown, PreviewView | Unreadable>("preview", connection.console, failed, async (params) => {
      const { uri, ...wish } = previewParams.parse(params);
      const path = pathOf(uri);
      const record = await open(path);
      return "unreadable" in record ? record : previewView(record, wish, version(path), uriOf);
    }),
  );
  connection.onRequest<PreviewFileAnswer, void>(
    PREVIEW_FILE,
    guarded<unknown, PreviewFileAnswer>("preview file", connection.console, null, async (params) => {
      const { uri, ...wish } = previewFileParams.parse(params);
      const record = await open(pathOf(uri));
      return "unreadable" in record ? null : previewFile(record, wish);
    }),
  );
}
