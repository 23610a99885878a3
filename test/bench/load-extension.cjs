// Prints how many ms it takes to load the extension's bundle, beside an editor's interface in which there is nothing.
const Module = require("node:module");
const { join } = require("node:path");

const nothing = new Proxy(class {}, {
  get: (target, name) => (name === "prototype" ? target.prototype : nothing),
});
// Bundles copy a module's own names and keep what it descends from.
const editor = Object.create(nothing);
const load = Module._load;
Module._load = (request, ...rest) => (request === "vscode" ? editor : load(request, ...rest));

const start = performance.now();
const { activate } = require(join(__dirname, "../../dist/extension.cjs"));
const time = performance.now() - start;
if (typeof activate !== "function") throw new Error("the bundle has nothing to activate");
process.stdout.write(String(time));
