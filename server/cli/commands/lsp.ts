// `headnote lsp`: the language server for any editor, over standard input and output.
import { FINE, UNUSABLE } from "../exit-code.ts";
import { complain, flagOption, type Subcommand } from "../subcommand.ts";

export const lsp: Subcommand = {
  name: "lsp",
  args: "",
  summary: "serve an editor by the language server protocol",
  examples: [["headnote lsp --stdio", "as editors start it"]],
  options: [{ flags: "--stdio", about: "over standard input and output" }],
  run: async (call, io) => {
    if (!flagOption(call, "stdio")) {
      complain(io, "say how the editor is reached: headnote lsp --stdio");
      return UNUSABLE;
    }
    const { serve } = await import("../serve.ts");
    serve();
    await io.ended;
    return FINE;
  },
};
