// The lines that a bench cannot do without because of what it shows.
import { missingLine } from "../../grammar/findings/missing-line.ts";
import type { Bench } from "../../shared/model/model.ts";
import { shifted } from "../../shared/text/span.ts";
import { rule } from "./rule.ts";

export const benchNeeds = rule<{ block: string; keyword: string; example: string }>({
  ...missingLine,
  check({ scope }, report) {
    for (const { entity, start } of scope.file.others) {
      if (entity.kind !== "bench") continue;
      for (const [keyword, example] of needs(entity)) {
        report(shifted(entity.origin.heading, start), {
          block: `bench that shows ${entity.shows?.kind}`,
          keyword,
          example,
        });
      }
    }
  },
});

function needs(bench: Bench): readonly (readonly [keyword: string, example: string])[] {
  const missing: (readonly [string, string])[] = [];
  const stated = bench.origin.lines;
  switch (bench.shows?.kind) {
    case "percent":
      if (!stated.has("range")) missing.push(["range", "range high 450 cfm at 28 inH2O"]);
      break;
    case "drop":
      if (!stated.has("element"))
        missing.push(["element", "element orifice bore 50 mm pipe 100 mm taps corner"]);
      if (!stated.has("meter")) missing.push(["meter", "meter downstream"]);
      break;
    case "meter-flow":
      if (!stated.has("meter")) missing.push(["meter", "meter downstream"]);
      break;
    default:
  }
  return missing;
}
