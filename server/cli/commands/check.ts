// `headnote check`: judges records and says what is wrong with them.
import { checkOnce, LEVELS } from "../check-once.ts";
import { UNUSABLE } from "../exit-code.ts";
import { STDIN } from "../find-files.ts";
import { REPORTERS } from "../reporters/index.ts";
import { complain, flagOption, type Subcommand, textOption } from "../subcommand.ts";
import { watchAndRepeat } from "../watch.ts";
import { openWorkspace, stdinPath, stdinText } from "../workspace.ts";

export const check: Subcommand = {
  name: "check",
  args: "[path...]",
  summary: "judge records and say what is wrong with them",
  examples: [
    ["headnote check", "all records in this folder and below"],
    ["headnote check a114 shop.headnote", "a folder's records and one file"],
    ["headnote check --fail-on warning --format github", "in a workflow, failing on warnings too"],
    ["headnote check - --stdin-name a114/new.headnote", "a text that is not saved yet, from standard input"],
  ],
  options: [
    {
      flags: "--format <format>",
      about: "how findings are printed",
      choices: Object.keys(REPORTERS),
      preset: "text",
    },
    {
      flags: "--fail-on <severity>",
      about: "the lightest finding that makes the exit code 1",
      choices: [...LEVELS, "never"],
      preset: "error",
    },
    { flags: "--stdin-name <name>", about: "where standard input is taken to lie" },
    { flags: "--watch", about: "check again whenever a record changes" },
  ],
  run: async (call, io) => {
    const paths = call.args.length === 0 ? ["."] : call.args;
    const stdin = paths.includes(STDIN) ? stdinPath(io.cwd, textOption(call, "stdinName")) : undefined;
    const isWatching = flagOption(call, "watch");
    if (isWatching && stdin !== undefined) {
      complain(io, "standard input cannot be watched");
      return UNUSABLE;
    }
    const texts = stdin === undefined ? [] : [[stdin, await stdinText(io)] as const];
    const workspace = openWorkspace(io.cwd, new Map(texts));
    const once = () => checkOnce(paths, stdin, workspace, call, io);
    if (!isWatching) return (await once()).code;
    return watchAndRepeat(once, workspace.changed, io);
  },
};
