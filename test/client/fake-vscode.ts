// As much of the editor's interface as the client's commands touch, in memory; what they did is kept to be looked at.
import { vi } from "vitest";

export class Position {
  readonly line: number;
  readonly character: number;
  constructor(line: number, character: number) {
    this.line = line;
    this.character = character;
  }
}

export class Range {
  readonly start: Position;
  readonly end: Position;
  constructor(start: Position, end: Position) {
    this.start = start;
    this.end = end;
  }
  get isEmpty(): boolean {
    return this.start.line === this.end.line && this.start.character === this.end.character;
  }
}

export class Selection extends Range {
  get active(): Position {
    return this.end;
  }
}

export class Location {
  readonly uri: Uri;
  readonly position: Position;
  constructor(uri: Uri, position: Position) {
    this.uri = uri;
    this.position = position;
  }
}

export class FileSystemError extends Error {
  readonly code: string;
  constructor(code: string) {
    super(code);
    this.code = code;
  }
}

/** URIs of scheme `file`, `untitled` and the like, without query or authority. */
export class Uri {
  readonly scheme: string;
  readonly path: string;
  constructor(scheme: string, path: string) {
    this.scheme = scheme;
    this.path = path;
  }
  toString(): string {
    return `${this.scheme}://${this.path}`;
  }
  static parse(text: string): Uri {
    const [, scheme = "", path = ""] = /^([a-z]+):(?:\/\/)?(.*)$/.exec(text) ?? [];
    if (scheme === "") throw new Error("no scheme");
    return new Uri(scheme, path);
  }
  static joinPath({ scheme, path }: Uri, ...parts: readonly string[]): Uri {
    return new Uri(scheme, new URL([path, ...parts].join("/"), "file://").pathname.replace(/(?<=.)\/$/, ""));
  }
}

export class WorkspaceEdit {
  readonly created: { uri: Uri; text: string }[] = [];
  createFile(uri: Uri, { contents }: { contents: Uint8Array }): void {
    this.created.push({ uri, text: new TextDecoder().decode(contents) });
  }
}

export class ShellExecution {
  readonly commandLine: string;
  constructor(commandLine: string) {
    this.commandLine = commandLine;
  }
}

export class Task {
  readonly definition: unknown;
  readonly scope: unknown;
  readonly execution: ShellExecution;
  readonly problemMatchers: unknown;
  constructor(
    definition: unknown,
    scope: unknown,
    _name: string,
    _source: string,
    execution: ShellExecution,
    problemMatchers: unknown,
  ) {
    this.definition = definition;
    this.scope = scope;
    this.execution = execution;
    this.problemMatchers = problemMatchers;
  }
}

export class EventEmitter<E> {
  readonly #listeners = new Set<(event: E) => void>();
  readonly event = (listener: (event: E) => void) => {
    this.#listeners.add(listener);
    return { dispose: () => this.#listeners.delete(listener) };
  };
  fire(happened: E): void {
    for (const listener of [...this.#listeners]) listener(happened);
  }
}

export const ViewColumn = { One: 1, Beside: -2 };

export const TextEditorRevealType = { InCenterIfOutsideViewport: 2 };

export const LanguageStatusSeverity = { Information: 0, Warning: 1, Error: 2 };

export function textDocument(uri: Uri, text: string) {
  const lines = text.split(/\r?\n/);
  return {
    uri,
    languageId: "headnote",
    version: 1,
    lineCount: lines.length,
    getText: () => text,
    lineAt: (lineNumber: number) => {
      const line = lines[lineNumber] ?? "";
      const range = new Range(new Position(lineNumber, 0), new Position(lineNumber, line.length));
      const firstNonWhitespaceCharacterIndex = line.length - line.trimStart().length;
      return {
        lineNumber,
        text: line,
        range,
        isEmptyOrWhitespace: line.trim() === "",
        firstNonWhitespaceCharacterIndex,
      };
    },
  };
}

export type FakeDocument = ReturnType<typeof textDocument>;

/** What the editor holds; a test fills it, and `reset` empties it. */
interface State {
  files: Map<string, Uint8Array>;
  isWritable: boolean;
  settings: Record<string, unknown>;
  diagnostics: number;
  changed: ((event: unknown) => void)[];
  commands: Map<string, unknown>;
  serializers: { deserializeWebviewPanel(panel: unknown, state: unknown): Promise<void> }[];
  taskProviders: { provideTasks(): Task[]; resolveTask(task: unknown): Task | undefined }[];
}

export const state: State = {
  files: new Map(),
  isWritable: true,
  settings: {},
  diagnostics: 0,
  changed: [],
  commands: new Map(),
  serializers: [],
  taskProviders: [],
};

const disposable = { dispose: () => undefined };

interface Disposable {
  readonly dispose: () => unknown;
}

export const Disposable = {
  from: (...all: readonly (Disposable | undefined)[]) => ({
    dispose: () => {
      for (const each of all) each?.dispose();
    },
  }),
};

/** An event of the editor; a test makes it happen, and a listener that was disposed of hears no more. */
function event<E>() {
  const listeners = new Set<(event: E) => void>();
  return {
    on: (listener: (event: E) => void) => {
      listeners.add(listener);
      return { dispose: () => listeners.delete(listener) };
    },
    fire: (happened: E) => {
      for (const listener of [...listeners]) listener(happened);
    },
    clear: () => listeners.clear(),
  };
}

export const events = {
  activeEditor: event<unknown>(),
  selection: event<unknown>(),
  renamed: event<unknown>(),
  settings: event<{ affectsConfiguration(section: string): boolean }>(),
  disk: event<unknown>(),
};

/** A panel with a page that only keeps what it is told. */
export function fakePanel() {
  const viewState = event<unknown>();
  const disposed = event<unknown>();
  const received = event<unknown>();
  const panel = {
    title: "",
    visible: true,
    webview: {
      html: "",
      options: {} as unknown,
      cspSource: "https://source",
      asWebviewUri: (uri: Uri) => uri,
      posted: [] as { type: string }[],
      postMessage: (message: { type: string }) => {
        panel.webview.posted.push(structuredClone(message));
      },
      onDidReceiveMessage: received.on,
      says: received.fire,
    },
    reveal: vi.fn((_column: unknown, _preserveFocus: boolean) => undefined),
    onDidChangeViewState: viewState.on,
    onDidDispose: disposed.on,
    turn: (visible: boolean) => {
      panel.visible = visible;
      viewState.fire(undefined);
    },
    dispose: vi.fn(() => disposed.fire(undefined)),
  };
  return panel;
}

export type FakePanel = ReturnType<typeof fakePanel>;

/** An editor window on a document. */
export function textEditor(document: FakeDocument, line = 0) {
  const at = new Position(line, 0);
  return {
    document,
    viewColumn: 1,
    selection: new Selection(at, at),
    revealRange: vi.fn((_range: Range, _how: number) => undefined),
  };
}

export const statusItem = { text: "", severity: 0 };

export const log = { error: vi.fn((_message: string) => undefined) };

export const window = {
  createOutputChannel: () => log,
  activeTextEditor: undefined as unknown,
  showInformationMessage: vi.fn(async (_message: string) => undefined),
  showQuickPick: vi.fn(
    async (_items: readonly string[], _options: unknown): Promise<string | undefined> => undefined,
  ),
  showInputBox: vi.fn(
    async (_options: { validateInput(typed: string): string | undefined }): Promise<string | undefined> =>
      undefined,
  ),
  showTextDocument: vi.fn(async (_document: FakeDocument, _options: { selection: Range }) => undefined),
  visibleTextEditors: [] as ReturnType<typeof textEditor>[],
  onDidChangeActiveTextEditor: events.activeEditor.on,
  onDidChangeTextEditorSelection: events.selection.on,
  createWebviewPanel: vi.fn((..._how: readonly unknown[]): FakePanel => fakePanel()),
  registerWebviewPanelSerializer: (_type: string, serializer: State["serializers"][number]) => {
    state.serializers.push(serializer);
    return disposable;
  },
  showSaveDialog: vi.fn(async (_options: unknown): Promise<Uri | undefined> => undefined),
  showErrorMessage: vi.fn(
    async (_message: string, ..._ways: readonly string[]): Promise<string | undefined> => undefined,
  ),
};

export const env = { clipboard: { writeText: vi.fn(async (_text: string) => undefined) } };

export const languages = {
  createLanguageStatusItem: () => statusItem,
  getDiagnostics: () => Array.from({ length: state.diagnostics }),
  onDidChangeDiagnostics: () => disposable,
};

export const commands = {
  registerCommand: (id: string, run: unknown) => {
    state.commands.set(id, run);
    return disposable;
  },
  executeCommand: vi.fn(async (..._call: readonly unknown[]) => undefined),
};

export const extensions = { getExtension: vi.fn((_id: string): unknown => undefined) };

export const tasks = {
  registerTaskProvider: (_type: string, provider: State["taskProviders"][number]) => {
    state.taskProviders.push(provider);
    return disposable;
  },
  fetchTasks: async () => state.taskProviders.flatMap((provider) => provider.provideTasks()),
  executeTask: vi.fn(async (_task: Task) => undefined),
};

export const workspace = {
  isTrusted: true,
  workspaceFolders: undefined as { uri: Uri }[] | undefined,
  getWorkspaceFolder: (uri: Uri) =>
    workspace.workspaceFolders?.find((folder) => uri.path.startsWith(`${folder.uri.path}/`)),
  getConfiguration: () => ({ get: (key: string, otherwise: unknown) => state.settings[key] ?? otherwise }),
  onDidChangeTextDocument: (listener: State["changed"][number]) => {
    state.changed.push(listener);
    return disposable;
  },
  onDidRenameFiles: events.renamed.on,
  onDidChangeConfiguration: events.settings.on,
  createFileSystemWatcher: () => ({
    onDidChange: events.disk.on,
    onDidCreate: events.disk.on,
    onDidDelete: events.disk.on,
    dispose: () => undefined,
  }),
  findFiles: async (pattern: string) =>
    [...state.files.keys()].filter((uri) => uri.endsWith(pattern.replace("**/*", ""))).map(Uri.parse),
  applyEdit: async ({ created }: WorkspaceEdit) => {
    if (!state.isWritable) return false;
    for (const { uri, text } of created) state.files.set(String(uri), new TextEncoder().encode(text));
    return true;
  },
  openTextDocument: async (what: Uri | { content: string }) =>
    what instanceof Uri
      ? textDocument(what, new TextDecoder().decode(state.files.get(String(what))))
      : textDocument(new Uri("untitled", "Untitled-1"), what.content),
  fs: {
    stat: async (uri: Uri) => ({ size: found(uri).length }),
    readFile: async (uri: Uri) => found(uri),
    writeFile: async (uri: Uri, bytes: Uint8Array) => {
      if (!state.isWritable) throw new FileSystemError("NoPermissions");
      state.files.set(String(uri), bytes);
    },
  },
};

function found(uri: Uri): Uint8Array {
  const bytes = state.files.get(String(uri));
  if (bytes === undefined) throw new FileSystemError("FileNotFound");
  return bytes;
}

export function reset(): void {
  vi.clearAllMocks();
  window.showSaveDialog.mockReset();
  window.showTextDocument.mockReset();
  Object.assign(state, {
    files: new Map(),
    isWritable: true,
    settings: {},
    diagnostics: 0,
    changed: [],
    commands: new Map(),
    serializers: [],
    taskProviders: [],
  });
  for (const each of Object.values(events)) each.clear();
  window.visibleTextEditors = [];
  window.activeTextEditor = undefined;
  workspace.workspaceFolders = undefined;
  workspace.isTrusted = true;
}
