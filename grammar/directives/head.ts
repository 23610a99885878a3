// A cylinder head.
import { heading } from "../directive.ts";
import { name, optional, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const head = heading({
  keyword: "head",
  slots: { id: name("head"), title: optional(text()) },
  doc: "Opens a cylinder head.",
  example: 'head a114 "iron two-valve head, casting 114"',
  open: (values, origin) => titled("head", values, origin),
});
