// The server in Node: over stdio, or over the pipe that an editor opens.
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { nodeRuntime } from "../disk/node-runtime.ts";
import type { Serve } from "./server.ts";

export function connect(serve: Serve): void {
  serve(createConnection(ProposedFeatures.all), nodeRuntime());
}
