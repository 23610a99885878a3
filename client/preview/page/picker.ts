// The list of what can be shown of a record.
import type { Choice, PreviewView } from "../../../shared/messages/preview.ts";
import { element, shownText } from "./element.ts";

/** Fills the list, and hides it where there is nothing to choose. */
export function fillPicker(list: HTMLSelectElement, picks: PreviewView["picks"], choice: Choice): void {
  const offers = picks.map(
    ({ choice: offered, label }) => [JSON.stringify(offered), shownText(label)] as const,
  );
  const known = [...list.options].map((option) => [option.value, option.text] as const);
  if (JSON.stringify(known) !== JSON.stringify(offers)) {
    list.replaceChildren(
      ...offers.map(([value, label]) => {
        const option = element("option", "", label);
        option.value = value;
        return option;
      }),
    );
  }
  const chosen = JSON.stringify(choice);
  list.value = offers.some(([value]) => value === chosen) ? chosen : (offers[0]?.[0] ?? "");
  list.hidden = offers.length === 0;
}
