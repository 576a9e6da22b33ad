import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { isAsSaid, pageBlocks } from "./support/command-blocks.ts";
import { moltline } from "./cli/in-memory.ts";

const ROOT = new URL("..", import.meta.url).pathname;
const COMMAND_NAMES =
  "species season start-for forecast plan log release draw compare survival evaluate room degree-days methods fit".split(
    " ",
  );
const page = readFileSync(join(ROOT, "docs/command-line.md"), "utf8");

/** Something that the page says beside what the command line did. */
interface Said {
  readonly name: string;
  readonly says: string;
  readonly text: string;
}

/** Runs a page from top to bottom, each command on the files that those before it left. */
async function runPage(markdown: string): Promise<Said[]> {
  const files: Record<string, string> = {};
  const said: Said[] = [];
  for (const block of pageBlocks(markdown)) {
    if (!("commands" in block)) {
      const { name, text, given } = block;
      if (given) files[name] = text;
      else said.push({ name, says: text, text: files[name] ?? "not written" });
      continue;
    }
    let text = "";
    for (const { words, into } of block.commands) text = await printed(words, into, files);
    const name = block.commands.map(({ words }) => words.slice(1).join(" ")).join("; ");
    if (block.says !== null) said.push({ name, says: block.says, text });
  }
  return said;
}

/** What a command prints; the bundled files that it names come from the project. */
async function printed(
  [program, ...rest]: readonly string[],
  into: string | null,
  files: Record<string, string>,
): Promise<string> {
  for (const word of rest)
    if (word.startsWith("fixtures/")) files[word] = readFileSync(join(ROOT, word), "utf8");
  const { code, out, err, written } = await moltline(rest, files);
  if (program !== "moltline" || code !== 0) throw new Error(`${rest.join(" ")} is refused: ${err}`);
  Object.assign(files, written);
  if (into !== null) files[into] = out;
  return out;
}

const said = await runPage(page);

describe("docs/command-line.md", () => {
  it("has an example with its output for each command", () => {
    const shown = new Set(said.map(({ name }) => name.split(" ")[0]));
    for (const name of COMMAND_NAMES) expect(shown).toContain(name);
  });

  it.each(said)("says what is there: $name", ({ says, text }) => {
    // A page of Markdown has no CRLF, which CSV and calendars have.
    const lines = text.replaceAll("\r\n", "\n");
    if (!isAsSaid(lines, says)) expect(lines).toBe(says);
  });
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
    });
    expect(pageBlocks("```sh\nmoltline\n```\n\ntext\n")).toEqual([
      { commands: [{ words: ["moltline"], into: null }], says: null },
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
