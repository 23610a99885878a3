import { expect, test } from "vitest";
import { rowFindings } from "../../server/service/row-findings.ts";
import { open, shopRecord } from "../kit/service.ts";

test("a finding that is true of several readings marks them all, and only them", () => {
  const { analysis, findings } = open(
    shopRecord(`  0.200 28.0 108.0
  0.300 28.0 150.0
  0.350 28.0 166.0
  0.400 28.0 178.0
  0.350 28.0 161.0
  0.300 28.0 147.5
  0.200 28.0 108.1
  0.100 28.0 55.0
`),
  );
  const [run] = analysis.runs;
  const marks = run && rowFindings(run, findings);
  expect(run?.result.rows.map((row) => marks?.get(row) ?? [])).toEqual([
    [],
    [],
    [],
    [],
    ["direction-dependent"],
    ["direction-dependent"],
    [],
    [],
  ]);
});
