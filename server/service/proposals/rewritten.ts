// Writes anew what was meant, as far as it can be told.
import { isDate } from "../../../grammar/read-date.ts";
import type { Finding, Fix } from "../../../shared/finding.ts";
import { readNumber } from "../../../shared/quantity/number.ts";
import { findUnit } from "../../../shared/quantity/unit.ts";
import type { Span } from "../../../shared/text/span.ts";
import type { Analysis } from "../../analysis/project.ts";
import { usedUnits } from "../used-units.ts";

export function fillCells(_: Analysis, { span, args }: Finding): Fix | undefined {
  const missing = Number(args["columns"]) - Number(args["cells"]);
  if (!(missing > 0)) return undefined;
  const text = "  -".repeat(missing);
  return {
    title: "Write '-' for what was not read",
    edits: [{ span: { line: span.line, from: span.to, to: span.to }, text }],
  };
}

/**
 * The unit that the file writes most for what is needed, behind a number or in the brackets of a column; none where it
 * writes none, or where more than one thing may stand there: a unit is never guessed.
 */
export function addUnit({ scope }: Analysis, { span, args }: Finding): Fix | undefined {
  const units = String(args["units"])
    .split(", ")
    .flatMap((symbol) => findUnit(symbol)?.unit ?? []);
  const [dimension, another] = new Set(units.flatMap(({ dimensions }) => dimensions));
  const [found] = dimension === undefined ? [] : usedUnits(scope.file.text)([dimension]);
  if (found === undefined || found.used === 0 || another !== undefined) return undefined;
  const { symbol } = found.unit;
  const isColumn = scope.file.outline.lines[span.line]?.kind === "columns";
  return behind(
    span,
    isColumn ? `[${symbol}]` : ` ${symbol}`,
    `Write ${args["written"]}${isColumn ? "" : " "}${isColumn ? `[${symbol}]` : symbol}`,
  );
}

/** What the trade says for a unit, where the wrong one would be meant: 28 inches of water, 42 per cent of humidity. */
const SHORT_FOR: Readonly<Record<string, string>> = {
  in: "inH2O",
  inch: "inH2O",
  '"': "inH2O",
  mm: "mmH2O",
  "%": "%RH",
};

/** The unit that another one is short for, where it is of what is needed. */
export function meantUnit(_: Analysis, { span, args }: Finding): Fix | undefined {
  const unit = SHORT_FOR[String(args["written"])];
  return unit !== undefined && String(args["units"]).split(", ").includes(unit)
    ? instead(span, unit)
    : undefined;
}

/** A number in which a letter stands for the digit that it looks like. */
export function plainNumber(_: Analysis, { span, args }: Finding): Fix | undefined {
  const number = String(args["written"]).replace(/[Oo]/g, "0").replace(/[lI]/g, "1");
  return number !== args["written"] && "value" in readNumber(number) ? instead(span, number) : undefined;
}

/** A name without what a name cannot hold. */
export function plainName(_: Analysis, { span, args }: Finding): Fix | undefined {
  const name = String(args["written"])
    .replace(/[^A-Za-z0-9._-]+/g, "-")
    .replace(/^[-._]+|-+$/g, "");
  return name === "" ? undefined : instead(span, name);
}

/** A date whose year comes first, with two digits for month and day and with the marks that a record has. */
export function plainDate(_: Analysis, { span, args }: Finding): Fix | undefined {
  const [, year, month = "", day = ""] =
    /^(\d{4})[-./]?(\d{1,2})[-./]?(\d{1,2})$/.exec(String(args["written"])) ?? [];
  const date = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isDate(date) ? instead(span, date) : undefined;
}

/** A name that nothing else of its kind has. */
export function freeName({ scope }: Analysis, { span, args }: Finding): Fix | undefined {
  const id = String(args["id"]);
  for (let number = 2; number < 1000; number++) {
    const name = `${id}-${number}`;
    const isTaken = scope.files.some(({ placed }) =>
      placed.some(({ entity }) => "id" in entity && entity.id === name),
    );
    if (!isTaken) return instead(span, name);
  }
  return undefined;
}

/** A pressure that was reduced to sea level, called so. */
export function asAltimeter({ scope }: Analysis, { span, args }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  const pressure = String(args["pressure"]);
  const from = text.indexOf(pressure, span.from);
  if (from < 0) return undefined;
  const at = { line: span.line, from, to: from };
  return { title: `Write altimeter ${pressure}`, edits: [{ span: at, text: "altimeter " }] };
}

function instead(span: Span, text: string): Fix {
  return { title: `Write ${text}`, edits: [{ span, text }] };
}

function behind({ line, to }: Span, text: string, title: string): Fix {
  return { title, edits: [{ span: { line, from: to, to }, text }] };
}
