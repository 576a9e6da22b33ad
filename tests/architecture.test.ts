import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  type Sources,
  cycles,
  importsOf,
  impurities,
  longFiles,
  unreachable,
  withoutComments,
  wrongDirections,
} from "./support/source-rules.ts";

const SRC = new URL("../src", import.meta.url).pathname;

const sources: Sources = new Map(
  readdirSync(SRC, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .map((path) => [path.replaceAll("\\", "/"), readFileSync(join(SRC, path), "utf8")]),
);

const ENTRIES = [
  "index.ts",
  "read/index.ts",
  "write/index.ts",
  "plot/index.ts",
  "sql/index.ts",
  "cli/main.ts",
];

/** Files over 200 lines, each with the reason why it is still one idea. */
const LONG: Readonly<Record<string, string>> = {
  "index.ts": "the table of contents of the library: one line a name",
  "time/zone.ts": "clocks of zones, both ways and as text, around one cache of formatters",
};

describe("the source tree", () => {
  it("is there", () => {
    expect(sources.size).toBeGreaterThan(100);
  });

  it("imports only from right to left", () => {
    expect(wrongDirections(sources)).toEqual([]);
  });

  it("keeps the core free of the world around it", () => {
    expect(impurities(sources)).toEqual([]);
  });

  it("has no file over 200 lines without a reason, and no reason without its file", () => {
    expect(longFiles(sources).sort()).toEqual(Object.keys(LONG).sort());
  });

  it("has no file that no entry leads to", () => {
    expect(unreachable(sources, ENTRIES)).toEqual([]);
  });

  it("has no imports in a circle", () => {
    expect(cycles(sources)).toEqual([]);
  });
});

describe("the rules catch a planted fault", () => {
  const of = (files: Readonly<Record<string, string>>): Sources => new Map(Object.entries(files));

  it.each([
    ["time/zone.ts", 'import { forecast } from "../forecast/forecast.ts";', "forecast/forecast.ts"],
    ["time/zone.ts", 'import type { Forecast } from "../forecast/forecast.ts";', "forecast/forecast.ts"],
    [
      "response/linear.ts",
      'import type {\n  LifeCycle,\n} from "../species/life-cycle.ts";',
      "species/life-cycle.ts",
    ],
    ["errors.ts", 'export { civilDay } from "./time/civil-day.ts";', "time/civil-day.ts"],
    ["write/index.ts", 'import { readLog } from "../read/index.ts";', "read/index.ts"],
    ["plot/index.ts", 'import { calendarText } from "../write/index.ts";', "write/index.ts"],
    ["rearing/cautions.ts", 'import { readLog } from "../read/index.ts";', "read/index.ts"],
    ["index.ts", 'export * from "./read/index.ts";', "read/index.ts"],
    ["clock/clock.ts", 'const later = await import("../evaluate/compare.ts");', "evaluate/compare.ts"],
    ["strange/new.ts", 'import { finite } from "../errors.ts";', "errors.ts"],
  ])("%s with %s", (path, text, target) => {
    expect(wrongDirections(of({ [path]: text, [target]: "" }))).toHaveLength(1);
  });

  it("lets a file import its own folder, what lies left of it, and lets an entry gather the core", () => {
    const fine = of({
      "units.ts": "",
      "notes.ts": 'import type { Celsius } from "./units.ts";',
      "response/linear.ts": "",
      "species/life-cycle.ts": 'import type { Cutoff } from "../response/linear.ts";',
      "species/index.ts": 'export * from "./life-cycle.ts";',
      "write/index.ts": 'import { x } from "../species/index.ts";',
      "cli/main.ts": 'import { x } from "../write/index.ts";',
      "index.ts": 'export * from "./species/index.ts";',
    });
    expect(wrongDirections(fine)).toEqual([]);
  });

  it("sees an import of a file that is not there", () => {
    expect(wrongDirections(of({ "clock/clock.ts": 'import "../time/gone.ts";' }))).toEqual([
      "clock/clock.ts imports time/gone.ts, which is not there",
    ]);
  });

  it.each([
    'import { readFileSync } from "node:fs";',
    'import { z } from "zod";',
    'import { dsvFormat } from "d3-dsv";',
    'import { Temporal } from "temporal-polyfill";',
    "const now = Date.now();",
    "const now = new Date();",
    "const now = new Date;",
    "const now = Date();",
    "const seed = Math.random();",
    "const zone = process.env.TZ;",
    'localStorage.setItem("a", "b");',
    "const text = day.toLocaleDateString();",
    "const upper = name.toLocaleUpperCase();",
    'console.log("here");',
  ])("a core file with %s", (text) => {
    expect(impurities(of({ "forecast/forecast.ts": text }))).toHaveLength(1);
    expect(impurities(of({ "cli/run.ts": text }))).toEqual([]);
  });

  it("lets the core use d3-array, a fixed date, and words in comments and texts", () => {
    const text = [
      'import { bisector } from "d3-array";',
      "const wall = new Date(0); // not Date.now()",
      "/** Like process.env, Math.random() and new Date() in spirit. */",
      'const message = "the process of hatching";',
    ].join("\n");
    expect(impurities(of({ "time/zone.ts": text }))).toEqual([]);
  });

  it("a file of 201 lines", () => {
    expect(longFiles(of({ "a.ts": "x\n".repeat(201), "b.ts": "x\n".repeat(200) }))).toEqual(["a.ts"]);
  });

  it("a file that nothing leads to", () => {
    const tree = of({
      "index.ts": 'export * from "./a.ts";',
      "a.ts": 'import "./b.ts";',
      "b.ts": "",
      "c.ts": "",
    });
    expect(unreachable(tree, ["index.ts"])).toEqual(["c.ts"]);
  });

  it("imports in a circle, types included", () => {
    const tree = of({
      "time/a.ts": 'import type { B } from "./b.ts";',
      "time/b.ts": 'import type { C } from "./c.ts";',
      "time/c.ts": 'import type { A } from "./a.ts";',
    });
    expect(cycles(tree)).toEqual(["time/a.ts > time/b.ts > time/c.ts > time/a.ts"]);
    expect(cycles(of({ "time/a.ts": 'import "./b.ts";', "time/b.ts": "" }))).toEqual([]);
  });

  it("reads imports over several lines and none from comments or texts", () => {
    const text = [
      'import a, {\n  type B,\n  c,\n} from "./one.ts";',
      '// import { d } from "./two.ts";',
      '/* export * from "./three.ts"; */',
      'export type { E } from "./four.ts";',
      "const example = `see https://example.org/ // not a comment`;",
    ].join("\n");
    expect(importsOf(text)).toEqual(["./one.ts", "./four.ts"]);
    expect(withoutComments(text)).toContain("// not a comment");
  });
});
