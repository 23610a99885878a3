// What a kind of display must tell to become a volume flow of the entering air.
import type { Bench, Shows } from "../../model/model.ts";

/**
 * One kind of display. Adding one is its file and a line in the list; a kind that is not in the list gives no results
 * and says so.
 */
export interface Meter {
  readonly shows: Shows["kind"];
  /** The column of the display's number. */
  readonly column: string;
  /**
   * How a bench's display number (SI, as its column gives it) at a depression (Pa) becomes a volume flow in m3/s of the
   * air that the bench takes for granted. `range` is the name of the range where the bench has them. `undefined` where
   * the bench does not say enough, or the number is outside what it knows.
   */
  readonly reader: (bench: Bench) => ReadDisplay | undefined;
  /** The same for a leak, which some displays write in another way than their readings. */
  readonly leakReader: (bench: Bench) => ReadDisplay | undefined;
}

export type ReadDisplay = (
  number: number,
  depression: number,
  range: string | undefined,
) => number | undefined;
