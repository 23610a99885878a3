// The shape of a command: all that the help, the argument reader and the dispatcher know of it stands in one record.
import { printable } from "../../shared/text/printable.ts";
import type { Io } from "./io.ts";

export interface CommandOption {
  /** As the help shows them: `--format <format>`. */
  readonly flags: string;
  readonly about: string;
  readonly choices?: readonly string[];
  /** The value that holds where the option is not given. */
  readonly preset?: string;
  /** May be given several times; its value is then a list. */
  readonly isRepeatable?: boolean;
}

export type OptionValue = string | boolean | readonly string[] | undefined;

/** What was written behind the command's name. Options stand under their long name in camel case. */
export interface Call {
  readonly args: readonly string[];
  readonly options: Readonly<Record<string, OptionValue>>;
}

export interface Subcommand {
  readonly name: string;
  /** The arguments as the help shows them: `[path...]`. */
  readonly args: string;
  readonly summary: string;
  /** Command lines and what each does. */
  readonly examples: readonly (readonly [line: string, about: string])[];
  readonly options: readonly CommandOption[];
  /** Gives the exit code. Heavy packages that only this command needs are loaded when it runs. */
  readonly run: (call: Call, io: Io) => Promise<number>;
}

/** The value of an option that takes one. */
export function textOption({ options }: Call, name: string): string | undefined {
  const value = options[name];
  return typeof value === "string" ? value : undefined;
}

/** The values of an option that may be repeated. */
export function listOption({ options }: Call, name: string): readonly string[] {
  const value = options[name];
  return typeof value === "object" ? value : [];
}

/** Whether an option without a value is given. */
export function flagOption({ options }: Call, name: string): boolean {
  return options[name] === true;
}

/** Says in one sentence on stderr what is wrong. */
export function complain(io: Io, sentence: string): void {
  io.err(`headnote: ${printable(sentence)}\n`);
}
