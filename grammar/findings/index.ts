// The list of what reading a file can report.
import type { FindingKind } from "../../shared/finding.ts";
import { badDate } from "./bad-date.ts";
import { badName } from "./bad-name.ts";
import { conflictMarker } from "./conflict-marker.ts";
import { decimalComma } from "./decimal-comma.ts";
import { extraCell } from "./extra-cell.ts";
import { extraValue } from "./extra-value.ts";
import { misplacedLine } from "./misplaced-line.ts";
import { missingCell } from "./missing-cell.ts";
import { missingColumns } from "./missing-columns.ts";
import { missingLine } from "./missing-line.ts";
import { missingUnit } from "./missing-unit.ts";
import { missingValue } from "./missing-value.ts";
import { numberForm } from "./number-form.ts";
import { repeatedLine } from "./repeated-line.ts";
import { unclosedBracket } from "./unclosed-bracket.ts";
import { unclosedText } from "./unclosed-text.ts";
import { unitSpelling } from "./unit-spelling.ts";
import { unknownChoice } from "./unknown-choice.ts";
import { unknownColumn } from "./unknown-column.ts";
import { unknownKeyword } from "./unknown-keyword.ts";
import { unknownUnit } from "./unknown-unit.ts";
import { unreadText } from "./unread-text.ts";
import { version } from "./version.ts";
import { wrongDimension } from "./wrong-dimension.ts";

/** Kinds of finding with any arguments: their words are made from the arguments of their own findings only. */
export const GRAMMAR_FINDINGS: readonly FindingKind<never>[] = [
  badDate,
  badName,
  conflictMarker,
  decimalComma,
  extraCell,
  extraValue,
  misplacedLine,
  missingCell,
  missingColumns,
  missingLine,
  missingUnit,
  missingValue,
  numberForm,
  repeatedLine,
  unclosedBracket,
  unclosedText,
  unitSpelling,
  unknownChoice,
  unknownColumn,
  unknownKeyword,
  unknownUnit,
  unreadText,
  version,
  wrongDimension,
];
