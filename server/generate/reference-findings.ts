// The part of the reference that explains every finding, with the message that its bad example really gives.
import { format } from "../../grammar/format.ts";
import type { FindingKind } from "../../shared/finding.ts";
import { KINDS } from "../catalogue.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, judgeExample } from "./example.ts";
import { anchor, code, fence } from "./markdown.ts";

/** Every finding under its code. */
export function findingsReference(): string {
  const intro = `What Headnote reports, by code. An _error_ means that something cannot be read or cannot be true, a _warning_ that a
result should not be trusted as it is, a _hint_ that more could be known. In the examples a line \`#- name\` begins another
file.`;
  const index = KINDS.map(({ code: id }) => `[${id}](#${id})`).join(" · ");
  return [`${anchor("findings")}\n\n## Findings`, intro, index, ...KINDS.map(findingReference)].join("\n\n");
}

function findingReference({ code: id, severity, what, why, bad, good }: FindingKind<never>): string {
  const [judged] = judgeExample(bad);
  const fix = judged?.finding.fix === undefined ? "By hand." : `Offered: ${judged.finding.fix.title}.`;
  return [
    `${anchor(id)}\n\n### ${code(id)} (${severity})`,
    `${what} ${why}`,
    fence("headnote", printed(bad)),
    `> ${severity}: ${judged?.message ?? ""}<br>help: ${judged?.help ?? ""}`,
    "Right:",
    fence("headnote", printed(good)),
    `Fix: ${fix}`,
  ].join("\n\n");
}

/** An example in canonical form, but for a file that cannot have one. */
function printed(example: string): string {
  return exampleFiles(example)
    .map(({ path, text }) => {
      const canonical = format(text) ?? text;
      return path === FIRST_EXAMPLE_FILE ? canonical : `#- ${path}\n${canonical}`;
    })
    .join("");
}
