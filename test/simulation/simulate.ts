// Prints the tables of RESULTS.md from so many times as many sweeps as the tests have time for: `npm run simulate -- 10`.
import { resultsPage, SECTIONS, type Sweeps, USUAL } from "./results.ts";

const times = Number(process.argv[2] ?? "10");
if (!(Number.isInteger(times) && times >= 1 && times <= 1000)) {
  console.error("say how many times as many sweeps: a whole number from 1 to 1000");
  process.exit(2);
}
const sweeps = Object.fromEntries(
  Object.entries(USUAL).map(([table, count]) => [table, count * times]),
) as unknown as Sweeps;
console.log(resultsPage(SECTIONS.map((section) => section(sweeps))));
