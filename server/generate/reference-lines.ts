// The part of the reference that lists the blocks and the lines that may stand in each.
import type { Heading, Property } from "../../grammar/directive.ts";
import { FORMS, findProperty, propertyKeywords } from "../../grammar/directives/index.ts";
import { signature } from "../../grammar/signature.ts";
import { anchor, code, fence } from "./markdown.ts";
import { isCondition } from "./snippets.ts";

/** Every block with its lines; a line that several blocks take has its anchor where it stands first. */
export function blocksReference(): string {
  const described = new Set<string>();
  const blocks = FORMS.filter((form): form is Heading => form.form === "heading");
  const intro = `Lines marked ● are conditions: state them once in the session, and again in a run where it differs. Lines
marked _required_ cannot be left out. Lines marked _any number_ may stand several times.`;
  return [
    `${anchor("blocks")}\n\n## Blocks and their lines`,
    intro,
    ...blocks.map((heading) => blockReference(heading, described)),
  ].join("\n\n");
}

function blockReference(heading: Heading, described: Set<string>): string {
  const { block, doc, example, columns } = heading;
  const lines = propertyKeywords(block).flatMap((keyword) => findProperty(block, keyword) ?? []);
  // A run repeats the session's conditions, which need not be read twice.
  const told = (form: Property) => block === "run" && isCondition(form);
  const own = lines.filter((form) => !told(form));
  const parts = [
    `${anchor(`block-${block}`)}\n\n### ${code(block)}`,
    fence("text", signature(heading)),
    `${doc} Example: ${code(example)}`,
    ...(columns === undefined || columns.length === 0
      ? []
      : [`Its table needs the columns ${columns.map(code).join(" and ")}.`]),
    ...(lines.length === own.length
      ? []
      : ["The ● lines of a [session](#block-session) may all stand here."]),
    own.map((form) => lineReference(form, heading, described)).join("\n"),
  ];
  return parts.filter((part) => part !== "").join("\n\n");
}

function lineReference(form: Property, heading: Heading, described: Set<string>): string {
  const { keyword, repeatable, doc, example } = form;
  const marks = [
    ...(heading.required.includes(keyword) ? ["_required_"] : []),
    ...(repeatable ? ["_any number_"] : []),
  ];
  const place = described.has(keyword) ? "" : anchor(`line-${keyword}`);
  described.add(keyword);
  const mark = heading.block === "session" && isCondition(form) ? "● " : "";
  const said = marks.length === 0 ? "" : ` (${marks.join(", ")})`;
  return `- ${place}${mark}${code(signature(form))}${said}<br>${doc}<br>Example: ${code(example)}`;
}
