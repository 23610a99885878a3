// A check plate whose certificate had run out when it was used.
import { shifted } from "../../shared/text/span.ts";
import { BARE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";

const record = (due: string) => `${BARE_SESSION}plate p2000
  flow       270.2 cfm at 28 inH2O in isa
  uncertainty 0.6 %
  due        ${due}
plate-check p2000
  depression[inH2O]  flow[cfm]
               28.0      275.2
`;

export const plateOverdue = rule<{ plate: string; due: string; date: string }>({
  code: "plate-overdue",
  severity: "warning",
  message: ({ plate, due, date }) =>
    `plate '${plate}' was to be certified again by ${due}; this session is of ${date}`,
  help: () =>
    "have the plate certified, or use another; until then it shows change, but no longer the true flow",
  what: "A session uses a check plate after the date by which it was to be certified again.",
  why: "A nicked or worn edge changes what a plate passes, and nobody sees it on the bench.",
  bad: record("2026-02-28"),
  good: record("2027-02-28"),
  check({ scope }, report) {
    const date = scope.file.session?.entity.date?.slice(0, DAY);
    if (date === undefined) return;
    for (const { entity, start, path } of scope.file.others) {
      if (entity.kind !== "plate-check" || entity.plate === undefined) continue;
      const home = scope.locate("plate", entity.plate.id);
      const plate = scope.find("plate", entity.plate.id);
      const due = plate?.due?.slice(0, DAY);
      // Dates are written year first, so that their order is that of their letters.
      if (home === undefined || plate === undefined || due === undefined || due >= date) continue;
      const line = plate.origin.lines.get("due");
      const file = home.path === path ? {} : { file: home.path };
      const related =
        line === undefined ? [] : [{ ...file, span: shifted(line, home.start), message: "the date" }];
      report(shifted(entity.origin.name, start), { plate: plate.id, due, date }, { related });
    }
  },
});

/** Length of a date without its time. */
const DAY = "2026-01-31".length;
