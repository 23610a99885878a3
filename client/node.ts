// The extension on a desktop or a remote host.
import type { ExtensionContext } from "vscode";
import { registerCheckTask } from "./check-task.ts";
import { start } from "./extension.ts";

export { deactivate } from "./extension.ts";

export function activate(context: ExtensionContext): void {
  context.subscriptions.push(registerCheckTask());
  start(context, async (parts) => (await import("./node-client.ts")).nodeClient(context, parts));
}
