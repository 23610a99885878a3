// Registers the language features: each asks the service and turns its answer into the protocol's form.
import type { Connection } from "vscode-languageserver";
import { asked, type FeatureSource } from "./features/asked.ts";
import { registerColouring } from "./features/colouring.ts";
import { registerCompleting } from "./features/completing.ts";
import { registerEditing } from "./features/editing.ts";
import { registerMoving } from "./features/moving.ts";
import { registerNaming } from "./features/naming.ts";
import { registerShowing } from "./features/showing.ts";
import { registerStructure } from "./features/structure.ts";

export function registerFeatures(connection: Connection, source: FeatureSource): void {
  const given = asked(connection, source);
  registerCompleting(given);
  registerShowing(given);
  registerColouring(given);
  registerEditing(given);
  registerStructure(given);
  registerNaming(given);
  registerMoving(given);
}
