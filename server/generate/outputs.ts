// The list of generated files: a new one is its own generator and one line here.
import { ebnf } from "./ebnf.ts";
import { benchSchema, checkSchema, compareSchema, configJsonSchema, tableSchema } from "./json-schemas.ts";
import { reference } from "./reference.ts";
import { snippets } from "./snippets.ts";
import { textmate } from "./textmate.ts";

/** A file of the repository, by its path from the top folder, and what it must contain. */
export interface Output {
  readonly path: string;
  readonly make: () => string;
}

export const OUTPUTS: readonly Output[] = [
  { path: "grammar/REFERENCE.md", make: reference },
  { path: "grammar/headnote.tmLanguage.json", make: textmate },
  { path: "grammar/snippets.json", make: snippets },
  { path: "grammar/headnote.ebnf", make: ebnf },
  { path: "grammar/schemas/table.schema.json", make: tableSchema },
  { path: "grammar/schemas/check.schema.json", make: checkSchema },
  { path: "grammar/schemas/bench.schema.json", make: benchSchema },
  { path: "grammar/schemas/compare.schema.json", make: compareSchema },
  { path: "grammar/schemas/config.schema.json", make: configJsonSchema },
];
