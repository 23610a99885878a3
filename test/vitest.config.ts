// How `npm test` runs the tests: the same values every time, so that a commit passes or fails and never both.
import { join } from "node:path";
import type { ViteUserConfig } from "vitest/config";

export default {
  test: {
    setupFiles: [join(import.meta.dirname, "kit/fixed-seed.ts")],
    // A busy machine is slow, not wrong.
    testTimeout: 60_000,
  },
} satisfies ViteUserConfig;
