// Hands findings to the client: it asks for them where it can, and is told of them where it cannot, never both.
import {
  type Connection,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import type { Capabilities } from "./capabilities.ts";
import { guarded } from "./guard.ts";
import type { Runtime } from "./runtime.ts";
import { toDiagnostic } from "./to-protocol.ts";
import { pathOf, uriOf } from "./uris.ts";
import type { WorkspaceService } from "./workspace-service.ts";

export interface DiagnosticsSource {
  readonly workspace: WorkspaceService;
  /** Open documents, and the version of one; -1 for a file that is not open. */
  readonly openPaths: () => readonly string[];
  readonly version: (path: string) => number;
  /** All records of the workspace. */
  readonly list: () => Promise<readonly string[]>;
  /** How many findings of one file are shown; 0 shows all. */
  readonly most: () => number;
}

export interface Diagnostics {
  /**
   * Says that something has changed; the client hears of it soon. `typed` is the document that was typed in, where it was
   * that: its own findings a client that asks will ask for by itself.
   */
  readonly changed: (typed?: string) => void;
  /** Says that a document was closed. */
  readonly closed: (path: string) => void;
}

/** Diffs and reviews show old versions of a record; what was wrong with those is nobody's concern now. */
function isJudged(path: string): boolean {
  return !/^\/(?:git|review|gitlens|pr)%3A/.test(path);
}

export function diagnostics(
  connection: Connection,
  capabilities: Capabilities,
  runtime: Runtime,
  source: DiagnosticsSource,
): Diagnostics {
  const itemsOf = async (path: string): Promise<Diagnostic[]> => {
    if (!isJudged(path)) return [];
    const checked = await source.workspace.check(path);
    if ("problem" in checked) return [unread(checked.problem)];
    const most = source.most();
    const { findings } = checked;
    const isCut = most > 0 && findings.length > most;
    const items = (isCut ? findings.slice(0, most) : findings).map((judged) => toDiagnostic(path, judged));
    return isCut ? [...items, more(findings.length, most)] : items;
  };
  return capabilities.pullsDiagnostics
    ? answer(connection, runtime, source, itemsOf)
    : publish(connection, runtime, source, itemsOf);
}

function answer(
  connection: Connection,
  runtime: Runtime,
  source: DiagnosticsSource,
  itemsOf: (path: string) => Promise<Diagnostic[]>,
): Diagnostics {
  const empty: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };
  connection.languages.diagnostics.on(
    guarded(
      "diagnostics",
      connection.console,
      empty,
      async ({ textDocument }): Promise<DocumentDiagnosticReport> => {
        return { kind: DocumentDiagnosticReportKind.Full, items: await itemsOf(pathOf(textDocument.uri)) };
      },
    ),
  );
  connection.languages.diagnostics.onWorkspace(
    guarded(
      "workspace diagnostics",
      connection.console,
      { items: [] },
      async ({ previousResultIds }, token) => {
        const before = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
        const items: WorkspaceDocumentDiagnosticReport[] = [];
        for (const path of await source.list()) {
          if (token.isCancellationRequested) break;
          const uri = uriOf(path);
          const version = source.version(path);
          const found = await itemsOf(path);
          const resultId = hash(JSON.stringify(found));
          items.push(
            before.get(uri) === resultId
              ? { kind: DocumentDiagnosticReportKind.Unchanged, uri, version: orNull(version), resultId }
              : {
                  kind: DocumentDiagnosticReportKind.Full,
                  uri,
                  version: orNull(version),
                  resultId,
                  items: found,
                },
          );
          await pause(runtime);
        }
        return { items };
      },
    ),
  );
  const refresh = latest(runtime, () => connection.languages.diagnostics.refresh());
  return {
    changed: (typed) => {
      if (typed === undefined || source.openPaths().some((path) => path !== typed)) refresh();
    },
    closed: refresh,
  };
}

function publish(
  connection: Connection,
  runtime: Runtime,
  source: DiagnosticsSource,
  itemsOf: (path: string) => Promise<Diagnostic[]>,
): Diagnostics {
  const send = async (path: string): Promise<void> => {
    const version = source.version(path);
    const items = await itemsOf(path);
    // A later version has been typed while the includes were read: its own findings are on their way.
    if (source.version(path) !== version) return;
    const at = version < 0 ? {} : { version };
    await connection.sendDiagnostics({ uri: uriOf(path), ...at, diagnostics: items });
  };
  const sendAll = async (): Promise<void> => {
    for (const path of source.openPaths()) await send(path);
  };
  const changed = latest(runtime, sendAll);
  return {
    changed: () => changed(),
    closed: (path) => {
      connection.sendDiagnostics({ uri: uriOf(path), diagnostics: [] }).catch(() => undefined);
    },
  };
}

/** Runs a task after what is waiting; calls in between are one. */
function latest(runtime: Runtime, task: () => unknown): () => void {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    runtime.later(async () => {
      waiting = false;
      try {
        await task();
      } catch {
        // The client has gone, or does not answer: there is nobody left to tell.
      }
    });
  };
}

/** Lets requests that came in meanwhile be answered. */
function pause(runtime: Runtime): Promise<void> {
  return new Promise((resolve) => runtime.later(resolve));
}

function unread(problem: string): Diagnostic {
  const start = { line: 0, character: 0 };
  return {
    range: { start, end: start },
    severity: DiagnosticSeverity.Information,
    source: "headnote",
    message: `this file is not judged: ${problem}`,
  };
}

function more(all: number, most: number): Diagnostic {
  const start = { line: 0, character: 0 };
  return {
    range: { start, end: start },
    severity: DiagnosticSeverity.Information,
    source: "headnote",
    message: `${all - most} more findings are not shown; 'headnote check' prints all of them`,
  };
}

function orNull(version: number): number | null {
  return version < 0 ? null : version;
}

/** FNV-1a of a text: tells whether findings have changed (Fowler, Noll, Vo; IETF draft-eastlake-fnv). */
function hash(text: string): string {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    value = Math.imul(value ^ text.charCodeAt(index), 0x01000193);
  }
  return (value >>> 0).toString(16);
}
