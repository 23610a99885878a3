// Loaded before a program: tells on its descriptor 3, when it ends, how long its own thread has worked and its peak memory.
const { writeSync } = require("node:fs");

process.on("exit", () => {
  const { user, system } = process.threadCpuUsage();
  const { maxRSS } = process.resourceUsage();
  writeSync(3, JSON.stringify({ worked: (user + system) / 1000, memory: maxRSS / 1024 }));
});
