// Resolves the paths of includes; paths always use `/`, whatever the machine.

/** The folder of a path, without a trailing slash; "" for a path without a folder. */
export function folderOf(path: string): string {
  const at = path.lastIndexOf("/");
  return at < 0 ? "" : at === 0 ? "/" : path.slice(0, at);
}

/** A part that is empty or only points: most paths have none. */
const TO_WORK_OUT = /(?:^|\/)\.{1,2}(?:\/|$)|\/\/|.\/$/;

/** A path relative to a folder, with `.` and `..` worked out. Leading `..` that lead out of a relative folder are kept. */
export function resolvePath(folder: string, relative: string): string {
  const joined = relative.startsWith("/") || folder === "" ? relative : `${folder}/${relative}`;
  if (!TO_WORK_OUT.test(joined)) return joined;
  const rooted = joined.startsWith("/");
  const parts: string[] = [];
  for (const part of joined.split("/")) {
    if (part === "" || part === ".") continue;
    if (part === ".." && parts.length > 0 && parts.at(-1) !== "..") parts.pop();
    else if (part !== ".." || !rooted) parts.push(part);
  }
  return (rooted ? "/" : "") + parts.join("/");
}

/** Whether a path is the folder itself or lies below it. */
export function isWithin(path: string, folder: string): boolean {
  if (folder === "" || folder === ".") return !path.startsWith("../") && path !== "..";
  const prefix = folder.endsWith("/") ? folder : `${folder}/`;
  return path === folder || path.startsWith(prefix);
}

/** The path as it would be written from a folder; itself where the two have nothing in common. */
export function relativePath(folder: string, path: string): string {
  const from = folder === "" ? [] : folder.split("/");
  const to = path.split("/");
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same++;
  return [...from.slice(same).map(() => ".."), ...to.slice(same)].join("/");
}
