// Makes the records that are measured: as many lines as wanted, all of them plausible and clean.

const SHOP = `headnote 1

bench quick "quick bench"
  shows      flow
  repeat     0.35 %
  settle     1.6 s
  quick      2.0 s
  within     0.2 inH2O
`;

const HEAD = `headnote 1

port intake
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
`;

const SESSION = `
session 2026-03-02T09:30+01:00 "timing"
  bench      quick
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused
`;

const FLOWS = [27, 55, 84, 112, 139, 165, 189, 208, 222, 230];

function run(id: string, seed: number): string[] {
  const rows = FLOWS.map((flow, index) => {
    const noisy = flow * (1 + 0.002 * Math.sin(seed * 10 + index));
    const cells = [
      (0.05 * (index + 1)).toFixed(3).padStart(10),
      (28 + 0.1 * ((index % 3) - 1)).toFixed(1).padStart(18),
      noisy.toFixed(1).padStart(9),
      (1.2 + 0.04 * index).toFixed(1).padStart(9),
    ];
    return cells.join("  ");
  });
  return [`run ${id}`, "  lift[in]  depression[inH2O]  flow[cfm]  settle[s]", ...rows, ""];
}

function runs(lines: number): string[] {
  const text: string[] = [];
  for (let index = 0; text.length < lines; index++) text.push(...run(`r${index}`, index));
  return text.slice(0, lines);
}

/** One record that stands alone, with about as many lines. */
export function aloneRecord(lines: number): string {
  const head = `${SHOP}${HEAD.replace("headnote 1\n", "")}${SESSION}\n`;
  const length = head.split("\n").length;
  return `${head}${runs(lines - length).join("\n")}\n`;
}

/** Records that share a shop and a head, by file name; as many lines each. */
export function sharedRecords(count: number, lines: number): ReadonlyMap<string, string> {
  const files = new Map([
    ["headnote.json", "{}\n"],
    ["shop.headnote", SHOP],
    ["head.headnote", HEAD],
  ]);
  const opening = `headnote 1\ninclude "shop.headnote"\ninclude "head.headnote"\n${SESSION}\n`;
  for (let index = 0; index < count; index++) {
    const body = runs(lines - opening.split("\n").length).join("\n");
    files.set(`record-${String(index).padStart(4, "0")}.headnote`, `${opening}${body}\n`);
  }
  return files;
}
