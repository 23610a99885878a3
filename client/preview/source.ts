// Asks the server what the preview is to show.
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
import type { Server } from "../server.ts";

export interface PreviewSource {
  /** The record as it is to be shown, or why it cannot be. */
  readonly view: (params: PreviewParams) => Promise<PreviewView | { readonly unreadable: string }>;
  /** What is shown as a file; nothing where there is nothing to write. */
  readonly file: (params: PreviewFileParams) => Promise<PreviewFileAnswer>;
}

export function previewSource(server: Server): PreviewSource {
  return {
    view: async (params) => previewAnswer.parse(await server.ask(PREVIEW, params)),
    file: async (params) => previewFileAnswer.parse(await server.ask(PREVIEW_FILE, params)),
  };
}
