// The shape of a file to start from, and the ways of writing its lines.
import { findProperty } from "../../../grammar/directives/index.ts";
import type { BlockKind } from "../../../shared/model/model.ts";

/** What was given on the command line, by the option's long name. */
export type Given = Readonly<Record<string, string | undefined>>;

export interface Skeleton {
  readonly kind: string;
  /** The name that holds where none is given. */
  readonly preset: string;
  /** The options that it has a place for. */
  readonly options: readonly string[];
  /** Blocks of lines; they are laid out in canonical form afterwards. */
  readonly text: (name: string, given: Given) => readonly (readonly string[])[];
}

/** A text as a record writes it. */
export function quoted(text: string): string {
  return `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;
}

/** A heading with its title, if one is given. */
export function headingLine(keyword: string, name: string, title: string | undefined): string {
  return title === undefined ? `${keyword} ${name}` : `${keyword} ${name} ${quoted(title)}`;
}

/** The given lines of a block, then those that are left to fill in, as comments made from the keywords' own examples. */
export function blockLines(
  block: BlockKind,
  lines: readonly (readonly [keyword: string, value: string | undefined])[],
): readonly string[] {
  const given = lines.flatMap(([keyword, value]) => (value === undefined ? [] : [`  ${keyword} ${value}`]));
  const open = lines.flatMap(([keyword, value]) => {
    const example = value === undefined ? findProperty(block, keyword)?.example : undefined;
    return example === undefined ? [] : [`  # ${example}`];
  });
  return open.length === 0 ? given : [...given, "  # To fill in, for example:", ...open];
}
