// The name of a picture as titles write it.
import type { PictureKind } from "../../shared/messages/preview.ts";

export function capital(picture: PictureKind): string {
  return picture.charAt(0).toUpperCase() + picture.slice(1);
}
