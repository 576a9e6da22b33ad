import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "library",
          include: ["tests/**/*.test.ts"],
          setupFiles: ["tests/support/random-runs.ts"],
          // The library keeps nothing between calls, and a fresh start for each file takes half as long again.
          isolate: false,
          // Slow machines are no reason for a red run.
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.browser.ts"],
          globalSetup: ["tests/browser/build-pages.ts"],
          // Pages wait more than they reckon.
          maxWorkers: 2,
          testTimeout: 120_000,
          hookTimeout: 240_000,
        },
      },
      {
        test: {
          // Against dist, which npm run build makes.
          name: "package",
          include: ["tests/package/**/*.package.ts"],
          testTimeout: 120_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
