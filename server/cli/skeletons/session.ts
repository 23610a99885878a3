// A session with one run, ready for its readings.
import { blockLines, headingLine, quoted, type Skeleton } from "./skeleton.ts";

export const sessionSkeleton: Skeleton = {
  kind: "session",
  preset: "run-1",
  options: ["date", "title", "bench", "port", "target", "stage", "cylinder", "baseline"],
  text: (name, { date = "", title, bench, port, target, stage, cylinder, baseline }) => [
    [
      headingLine("session", date, title),
      ...blockLines("session", [
        ["bench", bench],
        ["port", port],
        ["target", target],
        ["air", undefined],
        ["leak", undefined],
        ["adapter", undefined],
        ["entry", undefined],
      ]),
    ],
    [
      headingLine("run", name, undefined),
      ...blockLines("run", [
        ["cylinder", cylinder],
        ["stage", stage === undefined ? undefined : quoted(stage)],
        ["baseline", baseline],
      ]),
      "",
      "  lift[in] depression[inH2O] flow[cfm]",
    ],
  ],
};
