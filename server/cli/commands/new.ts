// `headnote new`: prints or writes a file to start from.
import { resolve } from "node:path";
import { missingLine } from "../../../grammar/findings/missing-line.ts";
import { format } from "../../../grammar/format.ts";
import { outline } from "../../../grammar/outline.ts";
import { readLines } from "../../../grammar/read-lines.ts";
import { printable } from "../../../shared/text/printable.ts";
import { wordsOf } from "../../catalogue.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import type { Io } from "../io.ts";
import { SKELETONS } from "../skeletons/index.ts";
import { type Given, quoted, type Skeleton } from "../skeletons/skeleton.ts";
import { type Call, complain, listOption, type Subcommand, textOption } from "../subcommand.ts";
import { createFile } from "../write-file.ts";

const VALUES: readonly (readonly [name: string, placeholder: string, about: string])[] = [
  ["date", "date", "YYYY-MM-DD of the session, with Thh:mm if you like, or today"],
  ["title", "text", "title of what is made"],
  ["bench", "id", "bench of the session"],
  ["port", "id", "port of the session"],
  ["target", "quantity", "depression to be held, such as '28 inH2O'"],
  ["stage", "text", "stage of the port in the session's run"],
  ["cylinder", "number", "cylinder of the session's run"],
  ["baseline", "id", "run that the session's run is compared with"],
  ["engine", "id", "engine of the head"],
];

export const newFile: Subcommand = {
  name: "new",
  args: "<kind> [name]",
  summary: "start a session, a bench, a head or an engine with what is known; the rest is left to fill in",
  examples: [
    ["headnote new bench north -o shop.headnote", "a bench in a file of its own"],
    ["headnote new head a114 --engine small-block", "a head with its two ports, printed"],
    [
      "headnote new session i3 --date today --include ../shop.headnote --bench north",
      "a session with the run i3",
    ],
  ],
  options: [
    ...VALUES.map(([name, placeholder, about]) => ({ flags: `--${name} <${placeholder}>`, about })),
    {
      flags: "--include <path>",
      about: "file to take in, as the new file is to name it; may be repeated",
      isRepeatable: true,
    },
    { flags: "-o, --output <file>", about: "write here instead of printing; the file must be new" },
  ],
  run: async (call, io) => {
    const [kind = "", name] = call.args;
    const skeleton = SKELETONS.find((each) => each.kind === kind);
    const problem =
      skeleton === undefined
        ? `there is no '${kind}' to start; take one of ${SKELETONS.map((each) => each.kind).join(", ")}`
        : misuse(skeleton, call);
    if (skeleton === undefined || problem !== undefined) {
      complain(io, problem ?? "");
      return UNUSABLE;
    }
    const text = fileText(skeleton, name ?? skeleton.preset, call, io);
    return text === undefined ? UNUSABLE : deliver(text, textOption(call, "output"), io);
  },
};

/** What is wrong with the options, before anything is made. */
function misuse({ kind, options }: Skeleton, call: Call): string | undefined {
  const misplaced = VALUES.find(
    ([name]) => textOption(call, name) !== undefined && !options.includes(name),
  )?.[0];
  if (misplaced !== undefined) return `a new ${kind} has no place for --${misplaced}`;
  if (options.includes("date") && textOption(call, "date") === undefined)
    return "say when: --date YYYY-MM-DD, or --date today";
  const values = [
    ...call.args,
    ...VALUES.flatMap(([name]) => textOption(call, name) ?? []),
    ...listOption(call, "include"),
  ];
  const broken = values.find((value) => /\p{Cc}|[\u2028\u2029]/u.test(value));
  return broken === undefined ? undefined : `'${broken}' has a character that no line of a record can hold`;
}

/** The file in canonical form; `undefined` after having said which value a record cannot hold. */
function fileText(skeleton: Skeleton, name: string, call: Call, io: Io): string | undefined {
  const given: Given = Object.fromEntries(VALUES.map(([option]) => [option, textOption(call, option)]));
  const dated = given["date"] === "today" ? { ...given, date: io.today() } : given;
  const includes = listOption(call, "include").map((path) => `include ${quoted(path)}`);
  const blocks = [["headnote 1", ...includes], ...skeleton.text(name, dated)];
  const text = blocks.map((lines) => `${lines.join("\n")}\n`).join("\n");
  const read = outline(readLines(text));
  const findings = [...read.findings, ...read.blocks.flatMap(({ block }) => block.findings)];
  // Required lines that nobody has given values for are what is left to fill in.
  const finding = findings.find(({ code }) => code !== missingLine.code);
  if (finding === undefined) return format(text) ?? text;
  const { message, help } = wordsOf(finding);
  complain(io, `${message}; ${help}`);
  return undefined;
}

function deliver(text: string, output: string | undefined, io: Io): number {
  if (output === undefined) {
    io.out(text);
    return FINE;
  }
  const problem = createFile(resolve(io.cwd, output), new TextEncoder().encode(text), io);
  if (problem !== undefined) {
    complain(io, `${output}: ${problem}`);
    return UNUSABLE;
  }
  io.err(`${printable(`wrote ${output}`)}\n`);
  return FINE;
}
