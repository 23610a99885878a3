// The preview's page in a real browser, under its real policy; what it says is answered by the real service.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import chromium from "@sparticuz/chromium";
import { type Browser, type BrowserContextOptions, chromium as driver, type Page } from "playwright-core";
import { pageHtml } from "../../client/preview/page-html.ts";
import { diskFiles } from "../../server/disk/disk-files.ts";
import { exampleFiles, memoryFiles } from "../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { previewView } from "../../server/service/preview.ts";
import { createService } from "../../server/service/service.ts";
import type { FromPage, PreviewState, PreviewView, ToPage } from "../../shared/messages/preview.ts";
import { THEMES, type ThemeName } from "./themes.ts";

export interface OpenPage {
  readonly page: Page;
  /** All that the page has said, as it came. */
  readonly said: FromPage[];
  /** What the page is told to show now; the record's text may be another. */
  readonly show: (text?: string) => Promise<void>;
  readonly tell: (message: ToPage) => Promise<void>;
  /** Waits for something that the page says. */
  readonly heard: <T extends FromPage["type"]>(type: T) => Promise<Extract<FromPage, { type: T }>>;
  /** What the browser complained of: broken policy, scripts that failed. */
  readonly complaints: string[];
  readonly view: () => PreviewView;
  readonly close: () => Promise<void>;
}

export interface Opening {
  readonly theme?: ThemeName;
  readonly width?: number;
  readonly height?: number;
  readonly browser?: BrowserContextOptions;
  readonly state?: Partial<PreviewState>;
  /** Of the cursor. */
  readonly line?: number;
}

/** What a page shows of a record without a choice. */
export const PLAIN: PreviewState = {
  uri: "file:///shop/record.headnote",
  isPinned: false,
  choice: { kind: "cursor" },
  axis: "lift",
  cd: "curtain",
  units: [],
  lifts: null,
};

/** A browser for the pages of one test file, and the server of the page's own files. */
export interface Pages {
  /** A text with its further files behind `#- path` lines, or the path of a file on the disk. */
  readonly open: (
    record: { readonly text: string } | { readonly path: string },
    opening?: Opening,
  ) => Promise<OpenPage>;
  readonly stop: () => Promise<void>;
}

const dist = join(import.meta.dirname, "../../dist/preview");
const NONCE = "0123456789abcdef0123456789abcdef";
const TYPES = { js: "text/javascript", css: "text/css", html: "text/html" } as const;

export async function startPages(): Promise<Pages> {
  const server = createServer(({ url = "" }, response) => {
    const [, name = "", ending = ""] = /^\/(page|theme-[a-z-]+)\.(js|css|html)/.exec(url) ?? [];
    const theme = THEMES[name.replace("theme-", "") as ThemeName];
    response.setHeader("content-type", TYPES[ending as keyof typeof TYPES] ?? "text/plain");
    if (ending === "html")
      response.end(markup(new URL(url, "http://x").searchParams.get("theme") as ThemeName));
    else if (theme !== undefined) response.end(`:root{${declarations(theme.properties)}}`);
    else if (name === "page") response.end(readFileSync(join(dist, `${name}.${ending}`)));
    else response.writeHead(404).end();
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const browser = await driver.launch({
    executablePath: await chromium.executablePath(),
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
    headless: true,
  });
  return {
    open: (record, opening = {}) => openPage(browser, `http://127.0.0.1:${port}`, record, opening),
    stop: async () => {
      await browser.close();
      server.close();
    },
  };
}

function declarations(properties: Readonly<Record<string, string>>): string {
  return Object.entries(properties)
    .map(([name, value]) => `${name}:${value}`)
    .join(";");
}

function markup(theme: ThemeName): string {
  const html = pageHtml({ script: "page.js", style: "page.css", source: "'self'", nonce: NONCE });
  const link = `<link rel="stylesheet" href="theme-${theme}.css">`;
  return html
    .replace("<link ", `${link}<link `)
    .replace("<body>", `<body class="${THEMES[theme].bodyClass}">`);
}

async function openPage(
  browser: Browser,
  address: string,
  record: { readonly text: string } | { readonly path: string },
  {
    theme = "light",
    width = 900,
    height = 900,
    browser: options,
    state: given,
    line = null as never,
  }: Opening,
): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width, height }, ...options });
  const page = await context.newPage();
  const said: FromPage[] = [];
  const complaints: string[] = [];
  let isClosed = false;
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  const { uri } = PLAIN;
  let state: PreviewState = { ...PLAIN, ...given };
  let text = "text" in record ? record.text : undefined;
  let version = 1;
  let view: PreviewView | undefined;
  let look: Extract<FromPage, { type: "look" }>["look"] | undefined;
  const tell = (message: ToPage) =>
    page.evaluate((data) => {
      (globalThis as unknown as { postMessage(data: unknown, to: string): void }).postMessage(data, "*");
      // Until the page has dealt with it.
      return new Promise<void>((resolve) => setTimeout(resolve, 0));
    }, message);
  const answer = async (): Promise<void> => {
    if (look === undefined) return;
    const opened = openRecord(record, text);
    const wish = { ...state, line, shown: view?.runs[0]?.id ?? null, look };
    view = previewView(opened, wish, version, (path) =>
      path === opened.analysis.scope.file.path ? uri : `file://${path}`,
    );
    await tell({ type: "show", state, view });
  };
  const waiting: [FromPage["type"], (message: never) => void][] = [];
  await page.exposeFunction("toHost", (message: FromPage) => {
    said.push(message);
    for (const [index, [type, resolve]] of [...waiting.entries()].reverse()) {
      if (type !== message.type) continue;
      waiting.splice(index, 1);
      resolve(message as never);
    }
    if (message.type === "ready" || message.type === "look") look = message.look;
    if (message.type === "axes") state = { ...state, ...message.axes };
    if (message.type === "zoom") state = { ...state, lifts: message.lifts };
    if (message.type === "reset") state = PLAIN;
    if (message.type === "choose") state = { ...state, choice: message.choice };
    if (message.type === "pin") state = { ...state, isPinned: message.isPinned };
    if (["ready", "look", "axes", "zoom", "reset", "choose", "pin"].includes(message.type)) {
      // What a closing page asks for is not waited for.
      answer().catch((error: unknown) => {
        if (!isClosed) complaints.push(String(error));
      });
    }
  });
  await page.addInitScript(() => {
    const host = globalThis as unknown as Record<string, unknown>;
    host["acquireVsCodeApi"] = () => ({
      postMessage: host["toHost"],
      setState: (kept: unknown) => {
        host["kept"] = kept;
      },
    });
  });
  await page.goto(`${address}/page.html?theme=${theme}`);
  return {
    page,
    said,
    complaints,
    tell,
    show: async (changed) => {
      text = changed ?? text;
      version++;
      await answer();
    },
    heard: (type) => new Promise((resolve) => waiting.push([type, resolve as never])),
    view: () => {
      if (view === undefined) throw new Error("nothing was shown yet");
      return view;
    },
    close: () => {
      isClosed = true;
      return context.close();
    },
  };
}

function openRecord(record: { readonly text: string } | { readonly path: string }, text: string | undefined) {
  const onDisk = "path" in record;
  const examples = onDisk ? [] : exampleFiles(text ?? "");
  const files = onDisk ? diskFiles() : memoryFiles(examples, "");
  const service = createService({ files, config: () => DEFAULT_CONFIG });
  const path = onDisk ? record.path : (examples[0]?.path ?? "");
  const checked = service.check(path);
  if ("problem" in checked) throw new Error(`${path}: ${checked.problem}`);
  return { analysis: checked.analysis, findings: checked.findings, service };
}
