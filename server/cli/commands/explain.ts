// `headnote explain`: says what a word means, whether it is a finding's code, a keyword, a column or a unit.
import { nearest } from "../../../shared/quantity/nearest.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import { complain, type Subcommand } from "../subcommand.ts";
import { TOPICS } from "../topics/index.ts";

/** No word that can be explained is nearly as long. */
const LONGEST = 64;

export const explain: Subcommand = {
  name: "explain",
  args: "[word]",
  summary: "say what a finding, a keyword, a column or a unit means",
  examples: [
    ["headnote explain", "all words that can be explained"],
    ["headnote explain fall-back", "a finding: why it matters, where it is reported and where not"],
    ["headnote explain leak", "a keyword"],
    ["headnote explain inH2O", "a unit"],
  ],
  options: [],
  run: async ({ args }, io) => {
    const [word] = args;
    if (word === undefined) {
      io.out(TOPICS.map(({ title, words }) => `${title}\n  ${words.join("\n  ")}\n`).join("\n"));
      return FINE;
    }
    const explanations = TOPICS.flatMap((topic) => topic.explain(word) ?? []);
    if (explanations.length > 0) {
      io.out(explanations.join("\n"));
      return FINE;
    }
    const [near] = nearest(
      word.slice(0, LONGEST),
      TOPICS.flatMap(({ words }) => words),
    );
    const hint = near === undefined ? "'headnote explain' lists all words" : `did you mean '${near}'?`;
    complain(io, `there is no finding, keyword, column or unit '${word}'; ${hint}`);
    return UNUSABLE;
  },
};
