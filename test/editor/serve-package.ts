// Serves the files of the extension's package over HTTP, as a shop of extensions serves them to editors in browsers.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { packedFiles } from "../kit/packed-files.ts";

export interface Served {
  readonly port: number;
  readonly stop: () => void;
}

const TYPES: Readonly<Record<string, string>> = {
  js: "text/javascript",
  cjs: "text/javascript",
  json: "application/json",
  png: "image/png",
};

/** What is packed from the project's folder, and nothing else of it. */
export async function servePackage(root: string): Promise<Served> {
  const files = new Set(packedFiles());
  const server = createServer(({ url = "" }, response) => {
    const path = decodeURIComponent(new URL(url, "http://localhost").pathname).slice(1);
    if (!files.has(path)) {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[path.split(".").at(-1) ?? ""] ?? "text/plain";
    response.writeHead(200, { "content-type": type }).end(readFileSync(join(root, path)));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (typeof address !== "object" || address === null) throw new Error("the server has no port");
  return { port: address.port, stop: () => server.close() };
}

/**
 * Adds what is served to the extensions that the workbench's page brings along, which is how an editor in a browser comes
 * by them. It is reached through the workbench's own address, since the page may load from nowhere else.
 */
export async function asBuiltIn(page: Page, port: number): Promise<void> {
  const start = 'id="vscode-workbench-web-configuration" data-settings="{';
  await page.route("**/?folder=*", async (route) => {
    const response = await route.fetch();
    const { host } = new URL(route.request().url());
    const extension = { scheme: "http", authority: host, path: `/proxy/${port}` };
    const setting = JSON.stringify({ additionalBuiltinExtensions: [extension] }).slice(1, -1);
    const body = (await response.text()).replace(start, `${start}${setting.replaceAll('"', "&quot;")},`);
    await route.fulfill({ response, body });
  });
}
