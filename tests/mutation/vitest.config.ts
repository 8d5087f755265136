import { defineConfig } from "vitest/config";

/** The laws that stand beside one folder's code, and nothing else: what `npm run mutate -- FOLDER` holds its mutants against. */
export default defineConfig({
  test: {
    environment: "node",
    setupFiles: ["tests/support/sentences.ts", "tests/support/oneSeed.ts"],
    testTimeout: 600_000,
    include: [`${process.env["MUTATED_FOLDER"] ?? "src/core"}/**/*.test.ts`],
    isolate: false,
  },
});
