// A head with an intake and an exhaust port.
import { blockLines, headingLine, type Skeleton } from "./skeleton.ts";

export const headSkeleton: Skeleton = {
  kind: "head",
  preset: "head-1",
  options: ["title", "engine"],
  text: (name, { title, engine }) => [
    [
      headingLine("head", name, title),
      ...blockLines("head", [
        ["engine", engine],
        ["casting", undefined],
      ]),
    ],
    ...["intake", "exhaust"].map((side) => [
      headingLine("port", `${name}-${side}`, undefined),
      ...blockLines("port", [
        ["of", name],
        ["side", side],
        ["valve", undefined],
        ["seat", undefined],
        ["throat", undefined],
        ["stem", undefined],
      ]),
    ]),
  ],
};
