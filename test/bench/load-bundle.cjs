// Prints how many ms it takes to load a bundle of the extension, beside an editor's interface in which there is nothing.
const Module = require("node:module");

const nothing = new Proxy(class {}, {
  get: (target, name) => (name === "prototype" ? target.prototype : nothing),
});
// Bundles copy a module's own names and keep what it descends from.
const editor = Object.create(nothing);
const load = Module._load;
Module._load = (request, ...rest) => (request === "vscode" ? editor : load(request, ...rest));

const [, , bundle, entry] = process.argv;
const start = performance.now();
const loaded = require(bundle);
const time = performance.now() - start;
if (typeof loaded[entry] !== "function") throw new Error(`the bundle has no ${entry}`);
process.stdout.write(String(time));
