import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import * as core from "../src/index.ts";
import * as plot from "../src/plot/index.ts";
import * as read from "../src/read/index.ts";
import * as sql from "../src/sql/index.ts";
import * as write from "../src/write/index.ts";
import { blocksOf, examplesOf, shownBy } from "./support/examples.ts";

const ROOT = new URL("..", import.meta.url).pathname;
const ENTRIES = { ...core, ...read, ...write, ...plot, ...sql };

/** Examples found when this was written; fewer would mean that the search has gone blind. */
const LEAST_IN_SOURCE = 60;
const LEAST_IN_PAGES = 8;

interface Example {
  readonly place: string;
  readonly code: string;
}

const inSource = readdirSync(join(ROOT, "src"), { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ts"))
  .sort()
  .flatMap((path): Example[] =>
    examplesOf(readFileSync(join(ROOT, "src", path), "utf8")).map((code) => ({ place: `src/${path}`, code })),
  );

const pages = [
  ...["README.md", "DEVELOPERS.md"],
  ...readdirSync(join(ROOT, "docs"), { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".md"))
    .map((path) => `docs/${path}`)
    .sort(),
];

const inPages = pages.flatMap((place): Example[] =>
  blocksOf(readFileSync(join(ROOT, place), "utf8")).map((code) => ({ place, code })),
);

function expectTrue(code: string, scope: Readonly<Record<string, unknown>>): void {
  const shown = shownBy(code, scope);
  expect(shown.length, "an example shows a value").toBeGreaterThan(0);
  for (const one of shown) expect(one.gave, one.code).toEqual(one.says);
}

describe("examples in comments", () => {
  it("are found", () => {
    expect(inSource.length).toBeGreaterThanOrEqual(LEAST_IN_SOURCE);
  });

  it.each(inSource)("$place: $code", async ({ place, code }) => {
    // Functions that no entry exports have examples too.
    const own: Readonly<Record<string, unknown>> = await import(join(ROOT, place));
    expectTrue(code, { ...ENTRIES, ...own });
  });
});

describe("examples in pages", () => {
  it("are found", () => {
    expect(inPages.length).toBeGreaterThanOrEqual(LEAST_IN_PAGES);
  });

  it("leave no code out: each block of TypeScript shows a value", () => {
    const silent = pages.flatMap((place) =>
      [...readFileSync(join(ROOT, place), "utf8").matchAll(/^```ts\n([\s\S]*?)^```/gm)]
        .filter(([, code = ""]) => !code.includes("// →"))
        .map(([block]) => `${place}: ${block}`),
    );
    expect(silent).toEqual([]);
  });

  it.each(inPages)("$place: $code", ({ code }) => {
    expectTrue(code, ENTRIES);
  });
});

describe("the search for examples", () => {
  it("finds them over several lines, before another tag and at the end", () => {
    const source = `/**
 * Twice.
 * @example
 * twice(
 *   2,
 * ) // → 4
 * twice(3) // → 6
 * @see nobody
 */
/** @param x none */
/**
 * @example
 * last // → "end"
 */`;
    const twice = (x: number): number => 2 * x;
    const found = examplesOf(source);
    expect(found).toHaveLength(2);
    expect(found.flatMap((code) => shownBy(code, { twice, last: "end" })).map(({ gave }) => gave)).toEqual([
      4,
      6,
      "end",
    ]);
  });

  it("sees a wrong value, and an import that no entry has", () => {
    expect(() => expectTrue("1 + 1 // → 3", {})).toThrow();
    expect(() => expectTrue("1 + 1", {})).toThrow();
    expect(() => shownBy('import { gone } from "moltline";\n1; // → 1', {})).toThrow("imports gone");
  });

  it("keeps what was declared, and reads a value that goes on", () => {
    const shown = shownBy("const a = [1, 2];\na.length // → 2\n({ a }) // → {\n//   a: [1, 2],\n// }", {});
    expect(shown).toHaveLength(2);
    expect(shown[0]?.gave).toBe(2);
  });

  it("takes only blocks of code that show a value", () => {
    expect(blocksOf("```ts\na; // → 1\n```\n```ts\nb;\n```\n```sh\nc // → 2\n```\n")).toEqual([
      "a; // → 1\n",
    ]);
  });
});
