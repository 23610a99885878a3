// Asks the server what the preview is to show.
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  PREVIEW,
  PREVIEW_FILE,
  type PreviewFileAnswer,
  type PreviewFileParams,
  type PreviewParams,
  type PreviewView,
  previewAnswer,
  previewFileAnswer,
} from "../../shared/messages/preview.ts";

export interface PreviewSource {
  /** The record as it is to be shown, or why it cannot be. */
  readonly view: (params: PreviewParams) => Promise<PreviewView | { readonly unreadable: string }>;
  /** What is shown as a file; nothing where there is nothing to write. */
  readonly file: (params: PreviewFileParams) => Promise<PreviewFileAnswer>;
}

export function previewSource(client: BaseLanguageClient): PreviewSource {
  return {
    view: async (params) => previewAnswer.parse(await client.sendRequest(PREVIEW, params)),
    file: async (params) => previewFileAnswer.parse(await client.sendRequest(PREVIEW_FILE, params)),
  };
}
