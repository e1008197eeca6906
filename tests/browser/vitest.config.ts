import { defineConfig } from "vitest/config";

/** Tests in a real browser. They build pages and start a browser each, so they have time, and run one by one. */
export default defineConfig({
  test: {
    root: `${import.meta.dirname}/../..`,
    include: ["tests/browser/**/*.test.ts"],
    globalSetup: ["tests/build-functions.ts", "tests/browser/whole-build.ts"],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
