// Remembers what a person chose to see, beyond the panel and the window: runs for each record, axes for the workspace.
import type { Memento } from "vscode";
import * as z from "zod/mini";
import { type Axes, axesSchema, type Choice, choiceSchema } from "../../shared/messages/preview.ts";

export interface Memory {
  /** The run of the cursor unless something else was chosen. */
  readonly choice: (uri: string) => Choice;
  readonly choose: (uri: string, choice: Choice) => void;
  /** `undefined` where nobody chose, or what was chosen is to be forgotten. */
  readonly axes: () => Axes | undefined;
  readonly chooseAxes: (axes: Axes | undefined) => void;
}

const CHOICES = "headnote.preview.choices";
const AXES = "headnote.preview.axes";
/** Of those that were not looked at for longest the choice is forgotten. */
const MOST = 100;
const stored = z.array(z.tuple([z.string(), choiceSchema]));

export function memoryIn(store: Memento): Memory {
  const known = stored.safeParse(store.get(CHOICES));
  const choices = new Map<string, Choice>(known.success ? known.data : []);
  return {
    choice: (uri) => choices.get(uri) ?? { kind: "cursor" },
    choose: (uri, choice) => {
      choices.delete(uri);
      if (choice.kind !== "cursor") choices.set(uri, choice);
      const kept = [...choices].slice(-MOST);
      for (const [old] of [...choices].slice(0, -MOST)) choices.delete(old);
      store.update(CHOICES, kept);
    },
    axes: () => axesSchema.safeParse(store.get(AXES)).data,
    chooseAxes: (axes) => {
      store.update(AXES, axes);
    },
  };
}
