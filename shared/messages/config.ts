// The workspace's headnote.json: what changes the meaning of findings, for editor and command alike.
import * as z from "zod/mini";

/** Made when it is asked for: most records are judged without such a file. */
export function configSchema() {
  const level = z.enum(["error", "warning", "hint", "off"]);
  /** A value with its unit, as a record would write it: `"5 %"`, `"1.2 inHg"`. */
  const share = z.string();
  return z.strictObject({
    $schema: z.optional(z.string()),
    severity: z.optional(z.record(z.string(), level)),
    limits: z.optional(
      z.strictObject({
        "leak-hint": z.optional(share),
        "leak-warning": z.optional(share),
        adapter: z.optional(share),
        "cd-lowest": z.optional(z.number()),
        "cd-highest": z.optional(z.number()),
        barometer: z.optional(share),
        cylinders: z.optional(share),
        scaling: z.optional(z.number()),
      }),
    ),
  });
}

export type ConfigFile = z.infer<ReturnType<typeof configSchema>>;
