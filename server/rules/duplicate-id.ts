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
    const others = scope.files.slice(1);
    for (const { entity, start } of scope.file.placed) {
      if (!isNamed(entity) || entity.id === "") continue;
      const { kind, id, origin } = entity;
      const first = defined(scope.file, kind, id);
      if (first !== undefined && first.start !== start) {
        const line = shifted(first.entity.origin.name, first.start).line + 1;
        report(shifted(origin.name, start), { kind, id, where: `on line ${line}` });
      } else if (others.some((file) => defined(file, kind, id) !== undefined)) {
        report(shifted(origin.name, start), { kind, id, where: "in an included file" });
      }
    }
  },
});
