// Results quoted far from the depression that they were read at.
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { figures, inUnit, written } from "./words.ts";

export const scaledTooFar = rule<{ depression: string; quote: string; ratio: string; limit: string }>({
  code: "scaled-too-far",
  severity: "warning",
  message: ({ depression, quote, ratio, limit }) =>
    `read at ${depression} and quoted at ${quote}: a ratio of ${ratio} (limit ${limit} either way)`,
  help: () =>
    "read at the depression that results are quoted at: over this ratio the square root is off by percents",
  what: "A row's depression and the quoted one differ by more than a factor of 1.5.",
  why: "Air is compressible: from 10 to 28 inH2O the square root law overstates flow by one to two and a half percent.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     10 inH2O
  quote      28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               10.0       36.0
`,
  good: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     25 inH2O
  quote      28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               25.0       56.0
`,
  checkRun(result, report, limits) {
    const quote = result.setup.quote.value;
    const most = limits.scaling * (1 + 1e-9);
    const depressions = result.numbers.depression;
    for (let at = 0; at < depressions.length; at++) {
      const depression = depressions[at] ?? Number.NaN;
      const ratio = quote.value / depression;
      if (ratio <= most && ratio * most >= 1) continue;
      const row = result.written[at];
      if (row === undefined || row.void !== undefined || !(depression > 0)) continue;
      report(cellSpan(result.setup.run, row, "depression"), {
        depression: inUnit(depression, quote.unit),
        quote: written(quote),
        ratio: figures(ratio),
        limit: figures(limits.scaling),
      });
      break;
    }
  },
});
