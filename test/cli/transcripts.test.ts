// Runs the transcripts beside this file: what a user types, and what the command answers. `UPDATE=1` rewrites them.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { inShop, type Shop } from "../kit/command.ts";

const fence = /^```(\S+)?(?: (.*))?\n([\s\S]*?)^```$/gm;

/** What a console block should read, given what it is answered. */
async function answered(shop: Shop, block: string): Promise<string> {
  const typed = /^\$ headnote ?(.*)$/m.exec(block)?.[1] ?? "";
  const { code, out, err } = await shop.headnote(words(typed));
  const talk = err === "" ? "" : err.replace(/^(?=.)/gm, "! ");
  const line = `$ headnote ${typed}`.trimEnd();
  return `${line}
${ended(out)}${ended(talk)}${
  code === 0
    ? ""
    : `exit ${code}
`
}`;
}

function ended(text: string): string {
  return text === "" || text.endsWith("\n") ? text : `${text}\n`;
}

function words(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? "");
}

const transcripts = readdirSync(import.meta.dirname).filter((name) => name.endsWith(".cli.md"));

test.each(transcripts)("%s", async (name) => {
  const path = join(import.meta.dirname, name);
  const text = readFileSync(path, "utf8");
  await inShop({}, async (shop) => {
    let real = "";
    let at = 0;
    for (const match of text.matchAll(fence)) {
      const [whole, kind, file, body = ""] = match;
      let block = whole;
      if (kind === "headnote" && file !== undefined) shop.write(file, body);
      else if (kind === "console") block = `\`\`\`console\n${await answered(shop, body)}\`\`\``;
      real += text.slice(at, match.index) + block;
      at = match.index + whole.length;
    }
    real += text.slice(at);
    if (process.env["UPDATE"] === "1") writeFileSync(path, real);
    else expect(real).toBe(text);
  });
});
