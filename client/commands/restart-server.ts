// Ends the language server and starts it again.
import type { BaseLanguageClient } from "vscode-languageclient";

export async function restartServer(client: BaseLanguageClient): Promise<void> {
  if (client.isRunning()) await client.stop();
  await client.start();
}
