// A bench whose display shows flow.
import { blockLines, headingLine, type Skeleton } from "./skeleton.ts";

export const benchSkeleton: Skeleton = {
  kind: "bench",
  preset: "bench-1",
  options: ["title"],
  text: (name, { title }) => [
    [
      headingLine("bench", name, title),
      ...blockLines("bench", [
        ["shows", "flow"],
        ["repeat", undefined],
        ["settle", undefined],
        ["quick", undefined],
        ["within", undefined],
      ]),
    ],
  ],
};
