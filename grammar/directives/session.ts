// One sitting at the bench.

import { present } from "../../shared/model/present.ts";
import { heading } from "../directive.ts";
import { date, optional, text } from "../slots.ts";

export const session = heading({
  keyword: "session",
  slots: { date: date(), title: optional(text()) },
  doc: "Opens the file's session: the conditions that hold for all its runs unless a run states its own.",
  example: 'session 2026-11-20T09:30+01:00 "intake 3, as cast"',
  open: (values, origin) => ({ kind: "session", ...present(values), notes: [], origin }),
});
