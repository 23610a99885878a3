// Between the protocol's URIs and the paths with `/` that all else uses; every URI has a path and gets itself back.

/** URIs by the paths that they were turned into: editors spell one place in several ways and want their own back. */
const spelt = new Map<string, string>();
const MOST_SPELT = 100_000;

/** A path for a URI: that of the file where it is one, else one that begins with the URI's scheme and authority. */
export function pathOf(uri: string): string {
  const path = toPath(uri);
  if (spelt.size >= MOST_SPELT) spelt.clear();
  spelt.set(path, uri);
  return path;
}

/** The URI of a path: the one that it came from, else that of a file, or of one beside such a place. */
export function uriOf(path: string): string {
  return spelt.get(path) ?? toUri(path);
}

function toPath(uri: string): string {
  const match = /^([A-Za-z][A-Za-z0-9+.-]*):(?:\/\/([^/]*))?(.*)$/s.exec(uri);
  if (match === null) return decoded(uri);
  const [, scheme = "", authority = "", path = ""] = match;
  if (scheme === "file" && authority === "") return decoded(path);
  return `/${encodeURIComponent(`${scheme}:${authority}`)}${path.startsWith("/") ? "" : "/"}${decoded(path)}`;
}

function toUri(path: string): string {
  const match = /^\/([A-Za-z][A-Za-z0-9+.-]*)%3A([^/]*)(.*)$/s.exec(path);
  if (match === null) return `file://${encoded(path)}`;
  const [, scheme = "", authority = "", rest = ""] = match;
  return `${scheme}://${decodeURIComponent(authority)}${encoded(rest)}`;
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
