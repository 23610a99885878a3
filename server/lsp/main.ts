// The server wherever an editor starts it, in a process or in a browser's worker: one program, so that it is shipped once.
import { startServer } from "./server.ts";

const here = "importScripts" in globalThis ? import("./browser.ts") : import("./node.ts");
void here.then(({ connect }) => connect(startServer));
