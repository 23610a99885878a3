// The lists of units that results can be shown in, one a kind of value; the record's own stand first.
import type { Axes, PreviewView } from "../../../shared/messages/preview.ts";
import { element } from "./element.ts";

type Offered = PreviewView["units"][number];
type Symbols = Axes["units"];

/** What stands for the unit that the record itself uses. */
const OWN = "";

/** `shown` fills the lists; a choice gives all units that are asked for from now on. */
export function unitChoices(
  holder: HTMLElement,
  chosen: (units: Symbols) => void,
): (offered: PreviewView["units"], asked: Symbols) => void {
  const lists = new Map<Offered["name"], HTMLSelectElement>();
  let offered: PreviewView["units"] = [];
  let asked: Symbols = [];

  const listFor = (name: Offered["name"]): HTMLSelectElement => {
    const list = element("select");
    list.id = `unit-${name}`;
    list.setAttribute("aria-label", `Unit of ${name}`);
    list.addEventListener("change", () => {
      const { offers = [] } = offered.find((each) => each.name === name) ?? {};
      const others = asked.filter((symbol) => !offers.includes(symbol));
      asked = [...others, ...(list.value === OWN ? [] : [list.value])] as Symbols;
      chosen(asked);
    });
    holder.append(list);
    return list;
  };

  return (units, symbols) => {
    offered = units;
    asked = symbols;
    for (const { name, own, shown, offers } of units) {
      const list = lists.get(name) ?? listFor(name);
      lists.set(name, list);
      const entries = [
        [OWN, own],
        ...offers.filter((symbol) => symbol !== own).map((symbol) => [symbol, symbol]),
      ] as const;
      const known = [...list.options].map(({ value, text }) => [value, text]);
      if (JSON.stringify(known) !== JSON.stringify(entries)) {
        list.replaceChildren(...entries.map(([value = "", text = ""]) => new Option(text, value)));
      }
      list.value = shown === own ? OWN : shown;
    }
  };
}
