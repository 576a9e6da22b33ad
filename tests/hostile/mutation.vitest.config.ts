import { defineConfig } from "vitest/config";

/** Tests that each area of `.stryker.config.js` is judged by: those that speak of it, not the whole suite. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  "degree-days": [
    "tests/clock/degree-days*.test.ts",
    "tests/clock/thermal-clock.test.ts",
    "tests/clock/accumulate.test.ts",
    "tests/response/linear.test.ts",
    "tests/diurnal/arc.test.ts",
    "tests/diurnal/sine.test.ts",
    "tests/published/daily-degree-days.test.ts",
    "tests/properties/degree-day-laws.test.ts",
  ],
  clock: [
    "tests/clock/*.test.ts",
    "tests/numeric/gauss-lobatto.test.ts",
    "tests/diurnal/timeline.test.ts",
    "tests/published/*.test.ts",
  ],
  forecast: ["tests/forecast/*.test.ts"],
};

const area = process.env["MUTATE"] ?? "degree-days";

export default defineConfig({
  test: {
    include: [...(TESTS[area] ?? ["tests/{clock,diurnal,forecast,published,properties}/**/*.test.ts"])],
    setupFiles: ["tests/support/random-runs.ts"],
    // A wrong formula shows in the first cases; a hundred would only make the survivors slow.
    env: { FC_RUNS: area === "forecast" ? "4" : "20" },
    testTimeout: 60_000,
  },
});
