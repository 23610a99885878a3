// The extension in a browser. An editor loads a single file there, so the client is in it, but is not run before it is asked for.
import type { ExtensionContext } from "vscode";
import { start } from "./extension.ts";

export { deactivate } from "./extension.ts";

export function activate(context: ExtensionContext): void {
  start(context, async (parts) => (await import("./browser-client.ts")).browserClient(context, parts));
}
