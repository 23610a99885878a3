// Shows lines of records below a line, in the editor's own small window, with the texts around them.
import * as vscode from "vscode";
import { showPlacesArguments } from "../../shared/messages/requests.ts";

/** `given` is what the server put into the lens. */
export async function showPlaces(...given: readonly unknown[]): Promise<void> {
  const parsed = showPlacesArguments.safeParse(given);
  if (!parsed.success) return;
  const [uri, position, places] = parsed.data;
  const at = ({ line, character }: typeof position) => new vscode.Position(line, character);
  const locations = places.map(
    (place) => new vscode.Location(vscode.Uri.parse(place.uri), at(place.position)),
  );
  await vscode.commands.executeCommand(
    "editor.action.peekLocations",
    vscode.Uri.parse(uri),
    at(position),
    locations,
    "peek",
  );
}
