// Explains a finding by what it says of its own example.
import { format } from "../../../grammar/format.ts";
import type { FindingKind } from "../../../shared/finding.ts";
import { CODES, findKind } from "../../catalogue.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, judgeExample } from "../../generate/example.ts";
import { indented, type Topic } from "./topic.ts";

export const findingTopic: Topic = {
  title: "findings",
  words: CODES,
  explain: (word) => {
    const kind = findKind(word.toLowerCase());
    return kind && explanation(kind);
  },
};

function explanation({ code, severity, what, why, bad, good }: FindingKind<never>): string {
  const found = judgeExample(bad).map(({ finding, severity: weight, message, help }) =>
    [`line ${finding.span.line + 1}: ${weight}[${finding.code}]: ${message}`, `help: ${help}`].join("\n"),
  );
  const parts = [
    `${code} (${severity})`,
    `${what}\n${why}`,
    "Here it is reported:",
    indented(bad),
    ...found,
    "Here it is not:",
    indented(shown(good)),
    `To silence it at a line, write above it: # allow ${code}: why`,
  ];
  return `${parts.join("\n\n")}\n`;
}

/** In canonical form, but for a file that cannot have one. Bad examples stay as written, since their lines are counted. */
function shown(example: string): string {
  return exampleFiles(example)
    .map(({ path, text }) => (path === FIRST_EXAMPLE_FILE ? "" : `#- ${path}\n`) + (format(text) ?? text))
    .join("");
}
