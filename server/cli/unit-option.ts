// `--unit`: results in another unit than the record uses.
import { findUnit, nearestUnits, type Unit } from "../../shared/quantity/unit.ts";
import { RESULT_DIMENSIONS } from "../../shared/render/display-units.ts";
import type { Io } from "./io.ts";
import { type Call, type CommandOption, complain, listOption } from "./subcommand.ts";

export const UNIT_OPTION: CommandOption = {
  flags: "--unit <unit>",
  about: "show values of its kind in this unit; may be repeated (default: as the record)",
  isRepeatable: true,
};

/** The units asked for; `undefined` after having said which word is none that results can have. */
export function unitsAsked(call: Call, io: Io): readonly Unit[] | undefined {
  const units: Unit[] = [];
  for (const text of listOption(call, "unit")) {
    const found = findUnit(text)?.unit;
    if (found === undefined || !found.dimensions.some((dimension) => RESULT_DIMENSIONS.includes(dimension))) {
      const hint = nearestUnits(text).find((near) => near !== text);
      const kinds = `${RESULT_DIMENSIONS.slice(0, -1).join(", ")} or ${RESULT_DIMENSIONS.at(-1)}`.replace(
        "-",
        " ",
      );
      complain(
        io,
        `--unit takes a unit of ${kinds}, as in mm or L/s: '${text}' is none${
          found === undefined && hint !== undefined ? `; did you mean '${hint}'?` : ""
        }`,
      );
      return undefined;
    }
    units.push(found);
  }
  return units;
}
