import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "../src/cli/command-table.ts";
import * as core from "../src/index.ts";
import * as plot from "../src/plot/index.ts";
import * as read from "../src/read/index.ts";
import * as sql from "../src/sql/index.ts";
import * as write from "../src/write/index.ts";
import { examplesOf } from "./support/examples.ts";

const ROOT = new URL("..", import.meta.url).pathname;

/** Texts of the files below a folder that end so, one after the other. */
function textsOf(folder: string, ending: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(ending) && !path.startsWith("built"))
    .map((path) => readFileSync(join(ROOT, folder, path), "utf8"));
}

const pages = [readFileSync(join(ROOT, "README.md"), "utf8"), ...textsOf("docs", ".md")].join("\n");

/** Where a reader can meet a name in use: pages, examples in comments, the command line, notebooks. */
const inUse = new Set(
  [
    pages,
    ...textsOf("src", ".ts").flatMap(examplesOf),
    ...textsOf("src/cli", ".ts"),
    ...textsOf("notebooks", ".html"),
    ...textsOf("notebooks/page", ".ts"),
  ]
    .join("\n")
    .match(/[A-Za-z_][A-Za-z0-9_]*/g),
);

/** Exports that nobody meets anywhere but in the reference. Take out what has got an example. */
const NOWHERE_IN_USE: readonly string[] = [];

const loaded = await Promise.all(COMMANDS.map(({ load }) => load()));

describe("commands and their options", () => {
  const commandLine = readFileSync(join(ROOT, "docs/command-line.md"), "utf8");

  it.each(COMMANDS)("docs/command-line.md has a section for $name", ({ name }) => {
    expect(commandLine).toContain(`\n## ${name}\n`);
  });

  it.each(loaded)("the help of $name explains each of its options", ({ help, options }) => {
    const told = (name: string): boolean => new RegExp(`--${name}(?![\\w-])`).test(help);
    expect(Object.keys(options).filter((name) => !told(name))).toEqual([]);
  });

  it.each(loaded)("no page names an option that $name does not have", ({ name, options }) => {
    const lines = [
      ...pages.replace(/\\\n\s*/g, "").matchAll(new RegExp(`moltline ${name} ([^\`\\n]*)`, "g")),
    ];
    const named = lines.flatMap(([line]) =>
      [...line.matchAll(/ --([a-z][\w-]*)/g)].map(([, one = ""]) => one),
    );
    expect(named.filter((one) => one !== "help" && !(one in options))).toEqual([]);
  });
});

describe("exports", () => {
  it.each(Object.entries({ core, read, write, plot, sql }))(
    "of %s all appear in a page, an example, the command line or a notebook",
    (_, entry) => {
      const unseen = Object.keys(entry).filter((name) => !inUse.has(name));
      expect(unseen).toEqual(Object.keys(entry).filter((name) => NOWHERE_IN_USE.includes(name)));
    },
  );
});
