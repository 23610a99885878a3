// The service over the disk: files, standard input among them, and the settings that hold for each.
import { dirname, join, resolve } from "node:path";
import { folderOf } from "../../shared/text/path.ts";
import type { Files } from "../analysis/files.ts";
import { diskFiles, findUp, readText, slashed } from "../disk/disk-files.ts";
import { type Config, DEFAULT_CONFIG, readConfig } from "../service/config.ts";
import { createService, type Service } from "../service/service.ts";
import type { Io } from "./io.ts";
import { shownPath } from "./shown-path.ts";

export interface Workspace {
  readonly service: Service;
  /** Reads the settings of these files, before they are judged; gives what is wrong with them in sentences. */
  readonly readSettings: (paths: readonly string[]) => readonly string[];
  /** Forgets what was read of the disk. */
  readonly changed: () => void;
}

const SETTINGS = "headnote.json";

/** `texts` are the files that are read from elsewhere, by their path; `read` reads the others, the disk unless stated. */
export function openWorkspace(
  cwd: string,
  texts: ReadonlyMap<string, string> = new Map(),
  read: Files["read"] = readText,
): Workspace {
  const disk = diskFiles();
  const folders = new Map<string, string>();
  const settings = new Map<string, Config>();

  /** The settings of a file, "" where it has none; looked for once a folder. */
  const settingsOf = (path: string): string => {
    const folder = folderOf(path);
    const known = folders.get(folder);
    if (known !== undefined) return known;
    const found = findUp(dirname(path), SETTINGS);
    const file = found === undefined ? "" : join(found, SETTINGS);
    folders.set(folder, file);
    return file;
  };

  const service = createService({
    files: {
      read: (path) => {
        const text = texts.get(path);
        return text === undefined ? read(path) : { text };
      },
      root: disk.root,
    },
    config: (path) => settings.get(settingsOf(path)) ?? DEFAULT_CONFIG,
    retain: false,
  });

  const readSettings = (paths: readonly string[]): readonly string[] => {
    const problems: string[] = [];
    for (const file of new Set(paths.map(settingsOf))) {
      if (file === "") continue;
      const read = readSettingsFile(file);
      if ("problem" in read) problems.push(`${shownPath(cwd, file)}: ${read.problem}`);
      else settings.set(file, read);
    }
    return problems;
  };

  const changed = (): void => {
    folders.clear();
    settings.clear();
    service.changed();
  };

  return { service, readSettings, changed };
}

function readSettingsFile(path: string): Config | { readonly problem: string } {
  const read = readText(path);
  return "problem" in read ? read : readConfig(read.text);
}

/** Where standard input is taken to lie: at a name that the user gives it, else in the current folder. */
export function stdinPath(cwd: string, name: string | undefined): string {
  return slashed(resolve(cwd, name ?? "<stdin>"));
}

/** Standard input, read as files are. */
export async function stdinText(io: Io): Promise<string> {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await io.stdin());
}
