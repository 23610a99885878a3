// One thing that completion offers, before it is known which words of the line it takes the place of.
import type { Edit } from "../../shared/text/edit.ts";

export interface Offer {
  readonly label: string;
  /** Plain text. */
  readonly insert: string;
  /** The same for editors that know snippets, with the cursor's place as `$1`; only where that is not the end. */
  readonly snippet?: string;
  readonly kind: "keyword" | "name" | "unit" | "choice" | "value" | "column" | "file";
  /** A few plain words beside the label. */
  readonly detail: string;
  /** Markdown, with all text of the record escaped. */
  readonly documentation?: string;
  /** What else of the file it changes. */
  readonly edits?: readonly Edit[];
}
