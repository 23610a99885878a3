// Explains a column of a table.
import { COLUMNS, findColumn } from "../../../grammar/columns.ts";
import { dimensionName } from "../../../shared/quantity/dimension.ts";
import { indented, type Topic } from "./topic.ts";

export const columnTopic: Topic = {
  title: "columns",
  words: COLUMNS.map(({ name }) => name),
  explain: (word) => {
    const column = findColumn(word.toLowerCase());
    if (column === undefined) return undefined;
    const { name, dimensions, within, doc, example } = column;
    const takes =
      dimensions.length === 0 ? "a word, without a unit" : dimensions.map(dimensionName).join(" or ");
    return [
      `${name} (a column of ${within.join(", ")})`,
      doc,
      `Its cells: ${takes}`,
      `Example:\n\n${indented(example.join("\n"))}\n`,
    ].join("\n\n");
  },
};
