import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    testTimeout: 30_000,
    // All processors: without a word one is left free, of two every other.
    maxWorkers: "100%",
    // What the tests load is loaded once by each worker. Nothing of it keeps what a test does.
    isolate: false,
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    exclude: ["tests/browser/**"],
    globalSetup: "tests/build-functions.ts",
  },
});
