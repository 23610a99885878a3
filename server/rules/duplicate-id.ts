// Two things of one kind with one name.
import { shifted } from "../../shared/text/span.ts";
import { defined, isNamed } from "../analysis/source-file.ts";
import { rule } from "./rule.ts";

export const duplicateId = rule<{ kind: string; id: string; where: string }>({
  code: "duplicate-id",
  severity: "error",
  message: ({ kind, id, where }) => `there is already a ${kind} '${id}' ${where}; the first one counts`,
  help: () => "give one of the two another name",
  what: "Two blocks of one kind have the same name, in a file or in what it includes.",
  why: "A name that stands for two things leaves open which of them was meant.",
  bad: `headnote 1
head a114
  casting    "one"
head a114
  casting    "two"
`,
  good: `headnote 1
head a114
  casting    "one"
head a115
  casting    "two"
`,
  check({ scope }, report) {
    const { file, files } = scope;
    for (const index of file.names.again) {
      const own = file.placed[index];
      if (own === undefined || !isNamed(own.entity)) continue;
      const { kind, id, origin } = own.entity;
      const first = defined(file, kind, id);
      const line = first && shifted(first.entity.origin.name, first.start).line + 1;
      report(shifted(origin.name, own.start), { kind, id, where: `on line ${line}` });
    }
    for (const other of files.slice(1)) {
      for (const [kind, named] of other.names.first) {
        for (const id of named.keys()) {
          const own = defined(file, kind, id);
          const where = "in an included file";
          if (own !== undefined) report(shifted(own.entity.origin.name, own.start), { kind, id, where });
        }
      }
    }
  },
});
