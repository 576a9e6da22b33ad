// Mutation testing: `npm run mutate -- degree-days` (or clock, forecast), one area at a time; see docs/robustness.md.
// Not a part of CI: an area takes from minutes to an hour.
const AREAS = {
  "degree-days": [
    "src/clock/degree-days*.ts",
    "src/response/linear.ts",
    "src/diurnal/arc.ts",
    "src/diurnal/sine.ts",
    "src/diurnal/triangle.ts",
  ],
  clock: ["src/clock/*.ts", "!src/clock/degree-days*.ts", "src/numeric/gauss-lobatto.ts"],
  forecast: ["src/forecast/**/*.ts"],
};

const area = process.env.MUTATE ?? "degree-days";

export default {
  testRunner: "vitest",
  vitest: { configFile: "tests/hostile/mutation.vitest.config.ts", related: false },
  mutate: AREAS[area] ?? area.split(","),
  // The type checker would refuse many mutants; what counts is whether a test does.
  disableTypeChecks: false,
  coverageAnalysis: "perTest",
  concurrency: 1,
  timeoutMS: 20_000,
  ignoreStatic: false,
  reporters: ["clear-text", "json"],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `node_modules/.cache/mutation/${area.replaceAll(/\W+/g, "-")}.json` },
  tempDirName: "node_modules/.cache/mutation/sandbox",
  ignorePatterns: ["docs", "notebooks", "dist", "coverage"],
  allowConsoleColors: false,
};
