// The findings of what is shown, each with the way to its line.
import type { PreviewView } from "../../../shared/messages/preview.ts";
import { element } from "./element.ts";
import { lineButton, type Reveal } from "./line-button.ts";

type Finding = PreviewView["findings"][number];

/** Told apart by shape and word, not by colour. */
const SIGNS: Readonly<Record<Finding["severity"], string>> = { error: "■", warning: "▲", hint: "○" };

export function findingsList(
  { findings, moreFindings, units }: Pick<PreviewView, "findings" | "moreFindings" | "units">,
  reveal: Reveal,
): readonly Node[] {
  if (findings.length === 0) return [element("p", "quiet", "No findings.")];
  const list = element("ul", "findings", ...findings.map((finding) => entry(finding, reveal)));
  const more =
    moreFindings === 0 ? [] : [element("p", "quiet", `and ${moreFindings} more: see the problems panel`)];
  const isTold = units.some(({ own, shown }) => own !== shown);
  const note = isTold ? [element("p", "quiet", "Findings speak in the record's own units.")] : [];
  return [...note, list, ...more];
}

function entry({ line, severity, code, message, help }: Finding, reveal: Reveal): Node {
  const sign = element("span", `sign ${severity}`, SIGNS[severity]);
  sign.setAttribute("aria-hidden", "true");
  const head = element(
    "p",
    "quiet",
    sign,
    `${severity} `,
    lineButton(line, `line ${line + 1}`, `${severity} ${code}: go to line ${line + 1}`, reveal),
    ` ${code}`,
  );
  return element(
    "li",
    "",
    head,
    element("p", "", message),
    ...(help === "" ? [] : [element("p", "quiet", help)]),
  );
}
