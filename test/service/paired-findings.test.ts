// Findings of two runs together stay true while either is edited, wherever it stands.
import { expect, test } from "vitest";
import { memoryFiles } from "../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { createService } from "../../server/service/service.ts";

const FIRST = `headnote 1
bench north
  shows flow
  repeat 0.4 %
session 2026-03-02
  bench north
  target 28 inH2O
  reference isa
  air 20 degC 1000 hPa 40 %RH
  leak none
run r1
  lift[in] depression[inH2O] flow[cfm]
  0.100    28.0              55.0
  0.200    28.0              108.0
`;
const SECOND = `headnote 1
include "first.headnote"
session 2026-03-03
  bench north
  target 28 inH2O
  reference isa
  air 20 degC 1000 hPa 40 %RH
  leak none
run r2
  baseline r1
  lift[in] depression[inH2O] flow[cfm]
  0.100    28.0              55.2
  0.200    28.0              108.4
`;

test("a gain is judged anew when the baseline's file changes, and as it was when it changes back", () => {
  let first = FIRST;
  const { root } = memoryFiles([], "/");
  const files = {
    root,
    read: (path: string) => ({ text: path === "/first.headnote" ? first : SECOND }),
  };
  const service = createService({ files, config: () => DEFAULT_CONFIG });
  const codes = () => {
    service.changed();
    const checked = service.check("/second.headnote");
    if ("problem" in checked) throw new Error(checked.problem);
    return checked.findings.map(({ finding }) => `${finding.code} ${finding.span.line}`);
  };
  expect(codes()).toEqual(["gain-within-noise 9"]);
  first = FIRST.replace("108.0", "100.0");
  expect(codes()).toEqual([]);
  first = FIRST.replace("run r1", "\n\nrun r1");
  expect(codes()).toEqual(["gain-within-noise 9"]);
  first = "headnote 1\n";
  expect(codes()).toContain("name-not-found 9");
});
