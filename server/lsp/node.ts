// The server in Node: over stdio, or over the pipe that an editor opens.
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { nodeRuntime } from "../disk/node-runtime.ts";
import { startServer } from "./server.ts";

startServer(createConnection(ProposedFeatures.all), nodeRuntime());
