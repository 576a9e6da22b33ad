import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type CommandBlock, commandBlocks, isAsSaid } from "./support/command-blocks.ts";
import { moltline } from "./cli/in-memory.ts";

const ROOT = new URL("..", import.meta.url).pathname;
const page = readFileSync(join(ROOT, "docs/command-line.md"), "utf8");

/** What the last command of a block prints; files that the commands name come from the project. */
async function printed({ commands }: CommandBlock): Promise<string> {
  const files: Record<string, string> = {};
  let last = "";
  for (const { words, into } of commands) {
    const [program, ...rest] = words;
    expect(program).toBe("moltline");
    for (const word of rest)
      if (word.startsWith("fixtures/")) files[word] = readFileSync(join(ROOT, word), "utf8");
    const { code, out, err } = await moltline(rest, files);
    expect([code, into === null ? err : ""], words.join(" ")).toEqual([0, ""]);
    if (into !== null) files[into] = out;
    last = out;
  }
  return last;
}

const blocks = commandBlocks(page).map((block) => ({
  name: block.commands.map(({ words }) => words.slice(1).join(" ")).join("; "),
  block,
}));

describe("docs/command-line.md", () => {
  it("has an example with its output for each of these commands", () => {
    const shown = new Set(
      blocks.flatMap(({ block }) => (block.says === null ? [] : block.commands.map(({ words }) => words[1]))),
    );
    for (const name of "forecast degree-days compare species survival room methods evaluate fit".split(" "))
      expect(shown).toContain(name);
  });

  it.each(blocks)("says what this prints: $name", async ({ block }) => {
    const text = await printed(block);
    if (block.says === null || isAsSaid(text, block.says)) return;
    expect(text).toBe(block.says);
  });
});

describe("the comparison of a page with what is printed", () => {
  it("takes commands apart, with lines that go on, quotes and files", () => {
    const [block] = commandBlocks(
      '```sh\nmoltline a --on "a b" \\\n  --json > x.csv\nmoltline b\n```\n\n```text\nout\n```\n',
    );
    expect(block).toEqual({
      commands: [
        { words: ["moltline", "a", "--on", "a b", "--json"], into: "x.csv" },
        { words: ["moltline", "b"], into: null },
      ],
      says: "out\n",
    });
    expect(commandBlocks("```sh\nmoltline\n```\n\ntext\n")[0]?.says).toBeNull();
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
