// Makes rows and their results for tests that compute with them alone.
import type { Row } from "../../shared/model/model.ts";
import type { RowResult } from "../../shared/model/result.ts";

/** A row without cells. */
export const EMPTY_ROW: Row = {
  line: 0,
  text: "",
  values: [],
  bounds: [],
  to: 0,
  remark: undefined,
  void: undefined,
};

/** A row's result with what is given, and nothing else. */
export function rowResult(given: Partial<RowResult> = {}): RowResult {
  return {
    row: EMPTY_ROW,
    lift: undefined,
    depression: undefined,
    flow: undefined,
    massFlow: undefined,
    effectiveArea: undefined,
    variance: 0,
    branch: undefined,
    slip: undefined,
    impossible: undefined,
    isUsable: false,
    uncertainty: undefined,
    ...given,
  };
}
