// A small shop's folder, under git, with one record that has something wrong.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const SHOP = `headnote 1

bench north "quick bench"
  shows      flow
  repeat     0.35 %
  within     0.2 inH2O

port intake
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
`;

const MONDAY = `headnote 1
include "shop.headnote"

session 2026-03-02T09:30+01:00 "as cast"
  bench      north
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused

run i1
  stage      "as cast"

  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               27,2      109.6
     0.300               28.0      157.0
`;

const TUESDAY = `headnote 1
include "shop.headnote"
include "monday.headnote"

session 2026-03-03 "short side laid back"
  bench      north
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused

run i2
  stage      "short side laid back"
  baseline   i1

  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       57.0
     0.300               28.0      164.0
`;

/** Makes the folder; `programs` are the files that `npx` finds in it by name. */
export function makeShop(programs: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "headnote-shop-"));
  writeFileSync(join(folder, "shop.headnote"), SHOP);
  writeFileSync(join(folder, "monday.headnote"), MONDAY);
  writeFileSync(join(folder, "tuesday.headnote"), TUESDAY);
  writeFileSync(join(folder, "headnote.json"), "{}\n");
  writeFileSync(join(folder, ".gitignore"), "node_modules/\n");
  const bin = join(folder, "node_modules/.bin");
  mkdirSync(bin, { recursive: true });
  for (const [name, file] of Object.entries(programs)) symlinkSync(file, join(bin, name));
  const git = (...args: readonly string[]) => execFileSync("git", args, { cwd: folder, stdio: "pipe" });
  git("init", "--quiet");
  git("add", ".");
  git("-c", "user.name=test", "-c", "user.email=test@localhost", "commit", "--quiet", "--message=first");
  return folder;
}
