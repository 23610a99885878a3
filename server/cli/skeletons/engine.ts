// An engine.
import { blockLines, headingLine, type Skeleton } from "./skeleton.ts";

export const engineSkeleton: Skeleton = {
  kind: "engine",
  preset: "engine-1",
  options: ["title"],
  text: (name, { title }) => [
    [
      headingLine("engine", name, title),
      ...blockLines("engine", [
        ["bore", undefined],
        ["stroke", undefined],
        ["cylinders", undefined],
      ]),
    ],
  ],
};
