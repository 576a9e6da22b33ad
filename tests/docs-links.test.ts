import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = new URL("..", import.meta.url).pathname;

/** All Markdown of the project: what stands at the top, and what its own folders hold at any depth. */
const PAGES = [
  ...["README.md", "DEVELOPERS.md"],
  ...["docs", "fixtures", "notebooks", "tests"].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".md"))
      .map((name) => `${folder}/${name}`)
      .sort(),
  ),
];

/** A page without its fenced code, in which nothing is a link or a heading. */
function prose(markdown: string): string {
  return markdown.replace(/^(`{3,}|~{3,})[^\n]*\n[\s\S]*?^\1[^\n]*$/gm, "");
}

/** Targets of the links and pictures of a page, those by reference too. */
function linkTargets(markdown: string): string[] {
  const text = prose(markdown).replace(/`[^`\n]*`/g, "");
  const inline = [...text.matchAll(/\]\(\s*<?([^)\s>]+)>?(?:\s+"[^"]*")?\s*\)/g)];
  const references = [...text.matchAll(/^\[[^\]]+\]:\s+<?([^\s>]+)>?/gm)];
  return [...inline, ...references].map(([, target = ""]) => target);
}

/** Anchors that headings get where Markdown is shown: lower case, no punctuation, a number for a second one. */
function anchors(markdown: string): Set<string> {
  const seen = new Map<string, number>();
  const found = new Set<string>();
  for (const [, title = ""] of prose(markdown).matchAll(/^#{1,6}\s+(.+?)\s*#*$/gm)) {
    const plain = title
      .replace(/\[([^\]]*)\]\([^)]*\)/g, "$1")
      .replace(/[*`]/g, "")
      .replace(/(^|\s)_(.+?)_(?=\s|$)/g, "$1$2");
    const slug = plain
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, "")
      .replace(/\s/g, "-");
    const times = seen.get(slug) ?? 0;
    seen.set(slug, times + 1);
    found.add(times === 0 ? slug : `${slug}-${times}`);
  }
  return found;
}

/** Why a link of a page leads nowhere, or `null`. */
function problemOf(page: string, target: string): string | null {
  const [path = "", anchor] = target.split("#");
  const file = path === "" ? join(ROOT, page) : resolve(ROOT, dirname(page), decodeURIComponent(path));
  // A page of the project is read from the project alone.
  if (relative(ROOT, file).startsWith("..")) return `${target} leads out of the project`;
  if (!existsSync(file)) return `${target} is not there`;
  if (anchor === undefined) return null;
  if (statSync(file).isDirectory() || !file.endsWith(".md")) return `${target} has no headings`;
  return anchors(readFileSync(file, "utf8")).has(anchor) ? null : `${target} has no such heading`;
}

describe("links of the documentation", () => {
  it.each(PAGES)("all links of %s within the project lead somewhere", (page) => {
    const inside = linkTargets(readFileSync(join(ROOT, page), "utf8")).filter(
      (target) => !/^[a-z][a-z0-9+.-]*:/i.test(target),
    );
    expect(inside.flatMap((target) => problemOf(page, target) ?? [])).toEqual([]);
  });

  it("the readme leads to every page of docs, itself or through a page that it links to", () => {
    const reached = new Set<string>();
    const ahead = ["README.md"];
    for (const page of ahead) {
      if (reached.has(page)) continue;
      reached.add(page);
      for (const target of linkTargets(readFileSync(join(ROOT, page), "utf8"))) {
        const linked = relative(ROOT, resolve(ROOT, dirname(page), target.split("#")[0] ?? ""));
        if (PAGES.includes(linked)) ahead.push(linked);
      }
    }
    expect(PAGES.filter((page) => page.startsWith("docs/") && !reached.has(page))).toEqual([]);
  });
});

describe("how links are found and followed", () => {
  it("takes links by word and by reference, and none from code", () => {
    const page = "[a](a.md#b) ![c](<c.png>)\n\n[d]: e.md\n\n```\n[no](no.md)\n```\n\n`[nor](nor.md)`\n";
    expect(linkTargets(page)).toEqual(["a.md#b", "c.png", "e.md"]);
  });

  it("names headings as they are shown", () => {
    const page = "# A _b_ `c`!\n\n## Twice\n\n## Twice\n\n```\n# no\n```\n\n### [Day](x.md) one, two\n";
    expect([...anchors(page)]).toEqual(["a-b-c", "twice", "twice-1", "day-one-two"]);
  });

  it.each([
    ["docs/how-to/log.md", "no-such-page.md", "no-such-page.md is not there"],
    ["docs/how-to/log.md", "#no-such-heading", "#no-such-heading has no such heading"],
    ["docs/how-to/log.md", "#the-log", null],
    ["docs/how-to/log.md", "../../../elsewhere", "../../../elsewhere leads out of the project"],
    ["README.md", "docs/how-to/log.md#the-log", null],
    ["README.md", "docs#x", "docs#x has no headings"],
  ])("in %s, %s: %s", (page, target, problem) => {
    expect(problemOf(page, target)).toBe(problem);
  });
});
