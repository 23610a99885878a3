// The README's recipes for other editors, run in those editors where they are installed.
import { spawn, spawnSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const root = new URL("../../", import.meta.url).pathname;
const readme = readFileSync(join(root, "README.md"), "utf8");

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "headnote-editors-"));
  symlinkSync(join(root, "dist/cli.cjs"), join(folder, "headnote"));
  copyFileSync(join(root, "samples/first.headnote"), join(folder, "first.headnote"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const isInstalled = (editor: string) => spawnSync(editor, ["--version"]).status === 0;

/** The recipe of a language, as the page prints it. */
function recipeIn(language: string): string {
  return new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(readme)?.[1] ?? "";
}

/** The machine's own, and in front of it the command as it was built. */
const environment = (): NodeJS.ProcessEnv => ({
  ...process.env,
  PATH: [folder, join(root, "node_modules/.bin"), process.env["PATH"]].join(delimiter),
});

/** Runs the recipe of a language, then a script that opens `first.headnote` and prints what it is told. */
function runRecipe(language: string, script: string, command: string, ...args: readonly string[]): string {
  const file = join(folder, `recipe.${language}`);
  writeFileSync(file, `${recipeIn(language)}\n${script}`);
  const { stdout, stderr } = spawnSync(command, [...args, file], {
    cwd: folder,
    env: environment(),
    encoding: "utf8",
    timeout: 30_000,
  });
  return stdout + stderr;
}

/** The letters that an editor on a terminal of its own has shown: keys are pressed until some text is among them. */
function shownAfter(keys: string, text: string, command: string, env: NodeJS.ProcessEnv): Promise<string> {
  const terminal = spawn("script", ["-qfec", `stty rows 50 cols 180; exec ${command}`, "/dev/null"], {
    cwd: folder,
    env: { ...environment(), TERM: "xterm", ...env },
  });
  return new Promise((resolve) => {
    let shown = "";
    const press = setInterval(() => terminal.stdin.write(keys), 500);
    const end = (): void => {
      clearInterval(press);
      clearTimeout(late);
      terminal.kill();
      resolve(lettersOf(shown));
    };
    const late = setTimeout(end, 30_000);
    terminal.stdout.on("data", (bytes: Buffer) => {
      shown += bytes;
      if (lettersOf(shown).includes(lettersOf(text))) end();
    });
    terminal.on("error", end);
    terminal.on("exit", end);
  });
}

/** A screen is told of changes only: blanks that stand where blanks stood are not among them. */
function lettersOf(screen: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal's commands begin with one.
  return screen.replace(/\x1b(?:\[[\d;?]*[ -/]*[@-~]|[^[])|\s/g, "");
}

const FINDING = "flow falls back 2.7 % after 0.400 in";

test.skipIf(!isInstalled("nvim"))("Neovim shows findings", { timeout: 40_000 }, () => {
  const script = `
vim.cmd("edit first.headnote")
vim.wait(20000, function() return #vim.diagnostic.get(0) > 0 end, 50)
for _, found in ipairs(vim.diagnostic.get(0)) do print(found.message) end
vim.cmd("qall!")`;
  expect(runRecipe("lua", script, "nvim", "--headless", "-u", "NONE", "-S")).toContain(FINDING);
});

test.skipIf(!isInstalled("emacs"))("Emacs shows findings", { timeout: 40_000 }, () => {
  const script = `
(package-initialize)
(require 'eglot)
(find-file "first.headnote")
(apply #'eglot--connect (eglot--guess-contact))
(let ((rounds 0))
  (while (and (< rounds 200) (null (flymake-diagnostics)))
    (accept-process-output nil 0.1)
    (flymake-start)
    (setq rounds (1+ rounds))))
(dolist (found (flymake-diagnostics)) (message "%s" (flymake-diagnostic-text found)))`;
  expect(runRecipe("elisp", script, "emacs", "--batch", "-l")).toContain(FINDING);
});

const hasAle = () => {
  const tried = "try | packadd ale | catch | cquit | endtry";
  return spawnSync("vim", ["-N", "-u", "NONE", "-es", "-c", tried, "-c", "qall"]).status === 0;
};

test.skipIf(!hasAle())("Vim shows findings", { timeout: 40_000 }, () => {
  const script = `
edit first.headnote
let rounds = 0
while rounds < 200 && empty(ale#engine#GetLoclist(bufnr()))
  sleep 100m
  let rounds += 1
endwhile
for found in ale#engine#GetLoclist(bufnr())
  echo found.text
endfor
qall!`;
  expect(runRecipe("vim", script, "vim", "-N", "-u", "NONE", "-i", "NONE", "-es", "-V1", "-S")).toContain(
    FINDING,
  );
});

test.skipIf(!isInstalled("hx") || !isInstalled("script"))(
  "Helix shows findings",
  { timeout: 40_000 },
  async () => {
    const config = join(folder, "config");
    mkdirSync(join(config, "helix"), { recursive: true });
    writeFileSync(join(config, "helix/languages.toml"), recipeIn("toml"));
    // To the next finding, whose message then stands beside it.
    const shown = await shownAfter("]d", FINDING, "hx first.headnote", { XDG_CONFIG_HOME: config });
    expect(shown).toContain(lettersOf(FINDING));
  },
);
