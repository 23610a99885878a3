// What a person has asked for and the server has to do, where there is no server.
import * as vscode from "vscode";
import { ServerDown } from "./server.ts";

const WAYS: Readonly<Record<string, string>> = {
  "Show Log": "headnote.showLog",
  "Start Again": "headnote.restartServer",
};

/** Says that the server is not running, and offers what can be done about it. */
export async function orSaysWhy(asked: Promise<void>): Promise<void> {
  try {
    await asked;
  } catch (error) {
    if (!(error instanceof ServerDown)) throw error;
    // Nobody waits for the choice: it may never be made.
    vscode.window.showErrorMessage(error.message, ...Object.keys(WAYS)).then((way) => {
      const command = way === undefined ? undefined : WAYS[way];
      if (command !== undefined) vscode.commands.executeCommand(command);
    });
  }
}
