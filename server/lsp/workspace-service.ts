// The service over an editor's files: what is open, what is on the disk, and the settings beside the records.

import { type Config, DEFAULT_CONFIG, readConfig } from "../service/config.ts";
import type { Checked, Service } from "../service/service.ts";
import { createService } from "../service/service.ts";
import type { OpenFiles } from "./open-files.ts";

export interface WorkspaceService {
  readonly service: Service;
  /** A file with its results and findings once all that it includes has been read. */
  readonly check: (path: string) => Promise<Checked | { readonly problem: string }>;
  /** Says that a file, or many, have changed. */
  readonly changed: () => void;
}

/** Larger texts are not judged while they are typed: about a quarter of a million lines. */
export const LARGEST_TEXT = 12 * 1024 * 1024;

const SETTINGS = "headnote.json";
/** No record includes files this deep; what is asked for after so many rounds is left unread. */
const MOST_ROUNDS = 20;

/** `complain` is told once of settings that cannot be used. */
export function workspaceService(files: OpenFiles, complain: (sentence: string) => void): WorkspaceService {
  const configs = new Map<string, Config>();
  // Settings of the same text stay the same ones, so that what was judged by them is not judged again at every edit.
  const texts = new Map<string, { readonly text: string; readonly config: Config }>();
  const config = (path: string): Config => {
    const file = `${files.root(path)}/${SETTINGS}`;
    const known = configs.get(file);
    if (known !== undefined) return known;
    const settled = settings(file);
    configs.set(file, settled);
    return settled;
  };
  const settings = (file: string): Config => {
    const read = files.read(file);
    if ("problem" in read) return DEFAULT_CONFIG;
    const before = texts.get(file);
    if (before?.text === read.text) return before.config;
    const found = readConfig(read.text);
    if ("problem" in found) complain(`${file}: ${found.problem}`);
    const config = "problem" in found ? DEFAULT_CONFIG : found;
    texts.set(file, { text: read.text, config });
    return config;
  };
  const service = createService({ files, config });
  const changed = (): void => {
    configs.clear();
    service.changed();
  };
  const check = async (path: string): Promise<Checked | { readonly problem: string }> => {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const read = files.read(path);
      if ("text" in read && read.text.length > LARGEST_TEXT)
        return { problem: "it is too large to be judged" };
      const checked = service.check(path);
      if (!(await files.fetchMissing())) return checked;
      changed();
    }
    return service.check(path);
  };
  return { service, check, changed };
}
