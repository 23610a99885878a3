// The language server over standard input and output.
import { connect } from "../lsp/node.ts";
import { startServer } from "../lsp/server.ts";

export function serve(): void {
  connect(startServer);
}
