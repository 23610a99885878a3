// The axes of a person who chose none, by the settings `headnote.preview`.
import * as vscode from "vscode";
import { type Axes, axesSchema } from "../../shared/messages/preview.ts";

export const PREVIEW_SETTINGS = "headnote.preview";

/** A setting that is none of its choices has its default. */
export function usualAxes(): Axes {
  const settings = vscode.workspace.getConfiguration(PREVIEW_SETTINGS);
  const { axis, cd, units } = axesSchema.shape;
  return {
    axis: axis.safeParse(settings.get("axis")).data ?? "lift",
    cd: cd.safeParse(settings.get("cd")).data ?? "curtain",
    units: units.safeParse(settings.get("units")).data ?? [],
  };
}
