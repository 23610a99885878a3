// Reads the command line, hands it to the command that it names, and turns what happens into an exit code.
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import manifest from "../../package.json" with { type: "json" };
import { SUBCOMMANDS } from "./commands/index.ts";
import { FINE, OUR_FAULT, UNUSABLE } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { nodeIo } from "./node-io.ts";
import { type CommandOption, complain, type OptionValue, type Subcommand } from "./subcommand.ts";

const COLOUR: CommandOption = {
  flags: "--color <when>",
  about: "whether to colour the output",
  choices: ["auto", "always", "never"],
  preset: "auto",
};

const FIRST_EXAMPLES: Subcommand["examples"] = [
  ["headnote check", "judge all records in this folder and below"],
  ["headnote table FILE", "corrected flow, coefficients and uncertainty of every point"],
  ["headnote chart FILE -o flow.svg", "draw its runs"],
];

/** Runs a command line (without the program's own name) and gives the exit code once all is written; never rejects. */
export async function run(args: readonly string[], io: Io = nodeIo()): Promise<number> {
  const code = await exitCode(args, io);
  await io.flushed();
  return code;
}

async function exitCode(args: readonly string[], io: Io): Promise<number> {
  let code = FINE;
  const program = new Command("headnote")
    .description(manifest.description)
    .version(manifest.version)
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .addHelpText("before", exampleText(FIRST_EXAMPLES));
  // A command that is named is all that there need be.
  const named = SUBCOMMANDS.filter(({ name }) => name === args[0]);
  for (const subcommand of named.length > 0 ? named : SUBCOMMANDS) {
    addSubcommand(program, subcommand, async (args, options) => {
      code = await subcommand.run({ args, options }, io);
    });
  }
  try {
    await program.parseAsync(args, { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? FINE : UNUSABLE;
    complain(io, `this is our fault, please report it: ${error instanceof Error ? error.message : error}`);
    if ((io.env["HEADNOTE_DEBUG"] ?? "") !== "" && error instanceof Error) io.err(`${error.stack}\n`);
    return OUR_FAULT;
  }
}

function addSubcommand(
  program: Command,
  { name, args, summary, examples, options }: Subcommand,
  action: (args: readonly string[], options: Readonly<Record<string, OptionValue>>) => Promise<void>,
): void {
  const command = program
    .command(`${name} ${args}`.trim())
    .description(summary)
    .addHelpText("before", exampleText(examples));
  for (const option of [...options, COLOUR]) command.addOption(optionOf(option));
  command.action(() => action(command.args, command.opts()));
}

function optionOf({ flags, about, choices, preset, isRepeatable }: CommandOption): Option {
  const option = new Option(flags, about);
  if (choices !== undefined) option.choices(choices);
  if (preset !== undefined) option.default(preset);
  if (isRepeatable) {
    option.argParser((value, before: readonly string[] | undefined) => [...(before ?? []), value]);
  }
  if (option.required) refuseOptions(option);
  return option;
}

/** A value that is missing would else be the option behind it, and what is said then of that one's value is of no help. */
function refuseOptions(option: Option): void {
  const { parseArg } = option;
  option.argParser((value: string, before: unknown) => {
    if (/^--?[a-z]/.test(value)) throw new InvalidArgumentError("A value belongs there.");
    return parseArg === undefined ? value : parseArg(value, before);
  });
}

function exampleText(examples: Subcommand["examples"]): string {
  const widest = Math.max(...examples.map(([line]) => line.length));
  const lines = examples.map(([line, about]) => `  ${line.padEnd(widest)}  ${about}`);
  return `Examples:\n${lines.join("\n")}\n`;
}
