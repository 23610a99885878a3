// Judges the example of a finding the way a workspace would, so that what the reference prints is what users see.
import type { Files } from "../analysis/files.ts";
import { DEFAULT_CONFIG } from "../service/config.ts";
import type { Judged } from "../service/findings.ts";
import { createService } from "../service/service.ts";

/** One file of an example. */
export interface ExampleFile {
  readonly path: string;
  readonly text: string;
}

/** The name of an example's first file. */
export const FIRST_EXAMPLE_FILE = "main.headnote";

const fileLine = /^#- (\S+)$/;

/** The files of an example: a line `#- path` begins another one. */
export function exampleFiles(example: string): readonly ExampleFile[] {
  const files: { path: string; lines: string[] }[] = [{ path: FIRST_EXAMPLE_FILE, lines: [] }];
  for (const line of example.split("\n")) {
    const path = fileLine.exec(line)?.[1];
    if (path === undefined) files.at(-1)?.lines.push(line);
    else files.push({ path, lines: [] });
  }
  return files.map(({ path, lines }) => ({ path, text: lines.join("\n") }));
}

/** Files that are held in memory; the workspace is the folder `root`. */
export function memoryFiles(files: readonly ExampleFile[], root: string): Files {
  const texts = new Map(files.map(({ path, text }) => [path, text]));
  return {
    read: (path) => {
      const text = texts.get(path);
      return text === undefined ? { problem: "it is not there" } : { text };
    },
    root: () => root,
  };
}

/** The findings of an example's first file, with the limits and severities that hold without a headnote.json. */
export function judgeExample(example: string): readonly Judged[] {
  const files = memoryFiles(exampleFiles(example), "");
  const checked = createService({ files, config: () => DEFAULT_CONFIG }).check(FIRST_EXAMPLE_FILE);
  return "problem" in checked ? [] : checked.findings;
}
