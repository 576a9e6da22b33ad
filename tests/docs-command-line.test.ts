import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "../src/cli/command-table.ts";
import { isAsSaid, pageBlocks } from "./support/command-blocks.ts";
import { type Said, runPage } from "./support/run-page.ts";

const ROOT = new URL("..", import.meta.url).pathname;

const PAGES = [
  "README.md",
  ...readdirSync(join(ROOT, "docs"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => `docs/${name}`)
    .sort(),
].filter((page) => pageBlocks(readFileSync(join(ROOT, page), "utf8")).some((block) => "commands" in block));

/** Pages with commands when this was written; fewer would mean that the search has gone blind. */
const LEAST_PAGES = 5;

const said = await Promise.all(
  PAGES.map(async (page) => {
    // One page that cannot be run must not hide what the others say.
    const failed = (error: unknown): Said[] => [{ name: "all of it", says: "it runs", text: String(error) }];
    return { page, said: await runPage(readFileSync(join(ROOT, page), "utf8")).catch(failed) };
  }),
);

describe("docs/command-line.md", () => {
  const shown = said.find(({ page }) => page === "docs/command-line.md")?.said ?? [];

  it.each(COMMANDS)("has an example of $name with its output", ({ name }) => {
    expect(new Set(shown.map((one) => one.name.split(" ")[0]))).toContain(name);
  });
});

describe("pages with commands", () => {
  it("are found", () => {
    expect(PAGES.length).toBeGreaterThanOrEqual(LEAST_PAGES);
  });

  it.each(said.flatMap(({ page, said }) => said.map((one) => ({ page, ...one }))))(
    "$page says what is there: $name",
    ({ says, text }) => {
      // A page of Markdown has no CRLF, which CSV and calendars have.
      const lines = text.replaceAll("\r\n", "\n");
      if (!isAsSaid(lines, says)) expect(lines).toBe(says);
    },
  );
});

describe("the comparison of a page with what is printed", () => {
  it("takes commands apart, with lines that go on, quotes and files", () => {
    const [block] = pageBlocks(
      '```sh\nmoltline a --on "a b" \\\n  --json > x.csv\nmoltline b\n```\n\n```text\nout\n```\n',
    );
    expect(block).toEqual({
      commands: [
        { words: ["moltline", "a", "--on", "a b", "--json"], into: "x.csv" },
        { words: ["moltline", "b"], into: null },
      ],
      says: "out\n",
      refused: false,
    });
    expect(pageBlocks("```sh\nmoltline a\n```\n\ntext\n")).toEqual([
      { commands: [{ words: ["moltline", "a"], into: null }], says: null, refused: false },
    ]);
    expect(pageBlocks("```sh\nnpm ci # moltline\n```\n")).toEqual([]);
    expect(pageBlocks("```sh\nmoltline b # why\n```\n\n```text refused\nno\n```\n")).toEqual([
      { commands: [{ words: ["moltline", "b"], into: null }], says: "no\n", refused: true },
    ]);
    expect(pageBlocks("```csv a.csv\n1\n```\n\n```text b.txt\n2\n```\n")).toEqual([
      { name: "a.csv", text: "1\n", given: true },
      { name: "b.txt", text: "2\n", given: false },
    ]);
  });

  it.each([
    ["a\nb\n", true],
    ["a\n", false],
    ["...\nb\n", true],
    ["a\n...\n", true],
    ["...\nb\n...\n", true],
    ["a\n...\na\n", false],
    ["...\nc\n", false],
    ["b\n...\n", false],
    ["...\n", true],
  ])("a and b on two lines, said as %j: %s", (says, holds) => {
    expect(isAsSaid("a\nb\n", says)).toBe(holds);
  });
});
