// The results of a run as a real table: the way to every reading without a mouse, and without sight.
import type { PreviewTable } from "../../../shared/messages/preview.ts";
import { element } from "./element.ts";
import { lineButton, type Reveal } from "./line-button.ts";

type Column = PreviewTable["columns"][number];

/** A run's tables; rows that are as before keep their elements, so that an edit touches one. */
export interface ResultsTable {
  readonly root: HTMLElement;
  readonly show: (table: PreviewTable) => void;
  /** Marks the row of a line, or none. */
  readonly mark: (line: number | null) => void;
}

/** `withSummary` where nothing else on the page says it. */
export function resultsTable(reveal: Reveal, withSummary: boolean): ResultsTable {
  const table = element("div");
  const after = element("div", "after");
  const root = element("section", "run", table, after);
  let heads = "";
  let tail = "";
  let rows: { text: string; readonly line: number | null; readonly row: HTMLTableRowElement }[] = [];
  let body = element("tbody");
  let marked: HTMLTableRowElement | undefined;
  let cursor: number | null = null;

  const mark = (line: number | null): void => {
    cursor = line;
    const row = line === null ? undefined : rows.find((entry) => entry.line === line)?.row;
    if (row === marked) return;
    marked?.removeAttribute("aria-current");
    row?.setAttribute("aria-current", "true");
    marked = row;
  };

  const rebuild = (given: PreviewTable): void => {
    const { title, head, columns } = given;
    body = element("tbody");
    rows = [];
    marked = undefined;
    if (columns.length === 0) {
      table.replaceChildren(element("p", "quiet", `${title}: no readings`));
      return;
    }
    const all = [...(hasLines(given) ? ["line" as const] : []), ...columns];
    table.replaceChildren(scrolled(tableOf(title, head, all, body)));
  };

  return {
    root,
    mark,
    show: (given) => {
      const { title, head, columns, more, averages, summary } = given;
      const headsNow = JSON.stringify([title, head, columns, hasLines(given)]);
      if (headsNow !== heads) rebuild(given);
      heads = headsNow;
      const tailNow = JSON.stringify([title, more, averages, withSummary && summary]);
      if (tailNow !== tail) {
        after.replaceChildren(
          ...(more > 0 ? [element("p", "quiet", moreWords(more))] : []),
          ...averaged(given),
          ...(withSummary ? summaryOf(given) : []),
        );
      }
      tail = tailNow;
      for (const [index, { line, cells }] of given.rows.entries()) {
        const text = JSON.stringify(cells);
        const before = rows[index];
        if (before?.text === text && before.line === line) continue;
        const row = rowOf(line, cells, columns, reveal);
        if (before === undefined) body.append(row);
        else before.row.replaceWith(row);
        rows[index] = { text, line, row };
      }
      for (const { row } of rows.splice(given.rows.length)) row.remove();
      if (marked !== undefined && !marked.isConnected) marked = undefined;
      mark(cursor);
    },
  };
}

/** What was read in another file has no lines here. */
function hasLines({ rows }: PreviewTable): boolean {
  return rows.some(({ line }) => line !== null);
}

function rowOf(
  line: number | null,
  cells: readonly string[],
  columns: readonly Column[],
  reveal: Reveal,
): HTMLTableRowElement {
  const values = cells.map((cell, index) => cellOf(cell, columns[index]));
  if (line === null) return element("tr", "", ...values);
  const { title = "", unit = "" } = columns[0] ?? {};
  const words = `line ${line + 1}, ${title} ${cells[0] ?? ""} ${unit}: go to it`;
  const head = element("th", "number", lineButton(line, `${line + 1}`, words, reveal));
  head.scope = "row";
  return element("tr", "", head, ...values);
}

function cellOf(text: string, column: Column | undefined): HTMLElement {
  return element("td", classOf(column), text);
}

function classOf(column: Column | undefined): string {
  return `${column?.isNumber ? "number" : "words"}${column?.isAside ? " aside" : ""}`;
}

function tableOf(
  title: string,
  head: string,
  columns: readonly ("line" | Column)[],
  body: HTMLTableSectionElement,
): HTMLTableElement {
  const words = element("div", "", element("strong", "", title));
  if (head !== "") words.append(element("span", "quiet", ` ${head}`));
  const caption = element("caption", "", words);
  const heads = columns.map((column) => {
    const cell = column === "line" ? element("th", "number", "line") : columnHead(column);
    cell.scope = "col";
    return cell;
  });
  return element("table", "", caption, element("thead", "", element("tr", "", ...heads)), body);
}

function columnHead(column: Column): HTMLTableCellElement {
  const { title, unit } = column;
  const cell = element("th", classOf(column), title);
  if (unit !== "") cell.append(element("span", "unit", unit));
  return cell;
}

function averaged({ averages: { columns, rows }, title }: PreviewTable): readonly Node[] {
  if (columns.length === 0) return [];
  const body = element(
    "tbody",
    "",
    ...rows.map((cells) => element("tr", "", ...cells.map((cell, index) => cellOf(cell, columns[index])))),
  );
  return [scrolled(tableOf(`${title}: averaged`, "where there are several readings", columns, body))];
}

function summaryOf({ summary }: PreviewTable): readonly Node[] {
  return [element("p", "quiet", summary.join(" · "))];
}

function moreWords(more: number): string {
  return `and ${more} more ${more === 1 ? "row" : "rows"}, which the CSV file has`;
}

/** Wide tables are pushed sideways in a frame of their own, by keys too. */
function scrolled(table: HTMLTableElement): HTMLElement {
  const frame = element("div", "scrolled", table);
  frame.tabIndex = 0;
  frame.setAttribute("role", "region");
  frame.setAttribute("aria-label", table.caption?.querySelector("strong")?.textContent ?? "results");
  return frame;
}
