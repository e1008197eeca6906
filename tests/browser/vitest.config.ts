import { defineConfig } from "vitest/config";

/** Tests in a real browser: a browser for each file, and as many files at once as there are processors. */
export default defineConfig({
  test: {
    root: `${import.meta.dirname}/../..`,
    include: ["tests/browser/**/*.test.ts"],
    globalSetup: ["tests/build-functions.ts", "tests/browser/shared/setup.ts"],
    maxWorkers: "100%",
    // What the files load is loaded once by each worker; what they open is closed with each of them.
    isolate: false,
    // Only what hangs takes as long: on a slow machine a build has minutes, a page half a minute for a step.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 30_000 } },
  },
});
