// Two things of one kind with one name.
import type { NamedKind } from "../../shared/model/model.ts";
import { shifted } from "../../shared/text/span.ts";
import { isNamed } from "../analysis/source-file.ts";
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
    const seen = new Map<string, { readonly path: string; readonly line: number }>();
    const others = scope.files.slice(1);
    for (const { entity, start } of scope.file.placed) {
      if (!isNamed(entity) || entity.id === "") continue;
      const kind: NamedKind = entity.kind;
      const key = `${kind} ${entity.id}`;
      const span = shifted(entity.origin.name, start);
      const here = seen.get(key);
      const elsewhere = others.find((file) => file.defines.get(kind)?.has(entity.id));
      if (here !== undefined) report(span, { kind, id: entity.id, where: `on line ${here.line + 1}` });
      else if (elsewhere !== undefined) report(span, { kind, id: entity.id, where: `in an included file` });
      if (here === undefined) seen.set(key, { path: scope.file.path, line: span.line });
    }
  },
});
