// What every feature needs: the file that is asked about, analysed, and a guard around the answer.
import type { Connection } from "vscode-languageserver";
import type { Analysis } from "../../analysis/project.ts";
import type { Scope } from "../../analysis/scope.ts";
import { type BaselineOf, baselines } from "../../service/baseline.ts";
import type { Position } from "../../service/position.ts";
import type { Checked } from "../../service/service.ts";
import type { Capabilities } from "../capabilities.ts";
import { guarded } from "../guard.ts";
import type { Runtime } from "../runtime.ts";
import type { Settings } from "../settings.ts";
import { pathOf } from "../uris.ts";
import type { WorkspaceService } from "../workspace-service.ts";

export interface FeatureSource {
  readonly capabilities: Capabilities;
  readonly runtime: Runtime;
  readonly workspace: WorkspaceService;
  /** All records of the workspace. */
  readonly list: () => Promise<readonly string[]>;
  /** All logs of the workspace that a trace can name. */
  readonly logs: () => Promise<readonly string[]>;
  /** What stands in the log that a record names, if it can be read. */
  readonly logText: (record: string, written: string) => Promise<string | undefined>;
  /** Shows the user a sentence, once. */
  readonly complain: (sentence: string) => void;
  readonly settings: () => Settings;
}

export interface Document {
  readonly textDocument: { readonly uri: string };
}

export interface Place extends Document {
  readonly position: { readonly line: number; readonly character: number };
}

export interface Asked extends FeatureSource {
  readonly connection: Connection;
  /** A handler that answers `otherwise` when it fails. */
  readonly guard: <P, R>(
    name: string,
    otherwise: R,
    handler: (params: P) => R | Promise<R>,
  ) => ReturnType<typeof guarded<P, R>>;
  /** The document that is asked about, with its findings; nothing where it cannot be read. */
  readonly read: (document: Document) => Promise<Checked | undefined>;
  readonly analysed: (document: Document) => Promise<Analysis | undefined>;
  /** All records of the workspace, analysed. */
  readonly others: () => Promise<readonly Scope[]>;
  readonly baselinesFor: (analysis: Analysis) => Promise<BaselineOf>;
}

/** Other files are looked through for names, but not without end. */
const MOST_FILES = 5000;

export function asked(connection: Connection, source: FeatureSource): Asked {
  const { workspace, list, complain } = source;
  const read = async ({ textDocument }: Document) => {
    const checked = await workspace.check(pathOf(textDocument.uri));
    return "problem" in checked ? undefined : checked;
  };
  return {
    ...source,
    connection,
    guard: (name, otherwise, handler) => guarded(name, connection.console, otherwise, handler),
    read,
    analysed: async (document) => (await read(document))?.analysis,
    others: async () => {
      const paths = await list();
      if (paths.length > MOST_FILES)
        complain(
          `${paths.length} records are in this workspace; names are looked for in ${MOST_FILES} of them.`,
        );
      const found = await Promise.all(paths.slice(0, MOST_FILES).map((path) => workspace.check(path)));
      return found.flatMap((checked) => ("problem" in checked ? [] : [checked.analysis.scope]));
    },
    baselinesFor: async (analysis) => {
      const analyses = new Map<string, Analysis>();
      for (const { path } of analysis.scope.files.slice(1)) {
        const checked = await workspace.check(path);
        if (!("problem" in checked)) analyses.set(path, checked.analysis);
      }
      return baselines(analysis, analyses);
    },
  };
}

export function at({ position }: Place): Position {
  return toPosition(position);
}

export function toPosition({ line, character }: Place["position"]): Position {
  return { line, column: character };
}
