// Between the protocol's URIs and the paths with `/` that all else uses; every URI has a path and gets itself back.

/** A path for a URI: that of the file where it is one, else one that begins with the URI's scheme and authority. */
export function pathOf(uri: string): string {
  const match = /^([A-Za-z][A-Za-z0-9+.-]*):(?:\/\/([^/]*))?(.*)$/.exec(uri);
  if (match === null) return decoded(uri);
  const [, scheme = "", authority = "", path = ""] = match;
  if (scheme === "file" && authority === "") return decoded(path);
  return `/${encodeURIComponent(`${scheme}:${authority}`)}${path.startsWith("/") ? "" : "/:"}${decoded(path)}`;
}

/** The URI of a path that `pathOf` gave, or of a file. */
export function uriOf(path: string): string {
  const match = /^\/([A-Za-z][A-Za-z0-9+.-]*%3A[^/]*)(\/:)?(.*)$/.exec(path);
  if (match === null) return `file://${encoded(path)}`;
  const [scheme = "", authority = ""] = decodeURIComponent(match[1] ?? "").split(/:(.*)/s);
  if (match[2] !== undefined) return `${scheme}:${encoded(match[3] ?? "")}`;
  return `${scheme}://${authority}${encoded(match[3] ?? "")}`;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** As editors write it: the colon of a drive is encoded too. */
function encoded(path: string): string {
  return path.split("/").map(encodeURIComponent).join("/");
}
