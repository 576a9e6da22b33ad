import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const KINDS = ["added", "changed", "numbers", "fixed", "removed"];

/** What is wrong with the entries of a changelog, if anything. */
function faults(text: string): string[] {
  const [head = "", ...releases] = text.split(/^## /m);
  const explained = [...head.matchAll(/^- `(\w+)`:/gm)].map((match) => match[1]);
  const found = explained.join() === KINDS.join() ? [] : [`the head explains ${explained.join(", ")}`];
  for (const release of releases) {
    const [title = "", ...lines] = release.split("\n");
    if (!/^(?:Unreleased \()?\d+\.\d+\.\d+(?:\)|, \d{4}-\d{2}-\d{2})$/.test(title)) {
      found.push(`${title} names no version and day`);
    }
    const entries = lines.join("\n").split(/^(?=\S)/m);
    for (const entry of entries.map((lines) => lines.replace(/\s+/g, " ").trim()).filter(Boolean)) {
      const kind = /^- (\w+): \S/.exec(entry)?.[1] ?? "";
      if (!KINDS.includes(kind)) found.push(`no kind: ${entry}`);
      if (kind === "numbers" && !/from .*\d.* to .*\d.*, because .+ \(.+\)/.test(entry)) {
        found.push(`numbers without old, new, reason and source: ${entry}`);
      }
    }
  }
  return found;
}

describe("docs/changelog.md", () => {
  const text = readFileSync(new URL("../docs/changelog.md", import.meta.url), "utf8");

  it("has only entries of the kinds that it explains, and for other numbers old, new, reason and source", () => {
    expect(faults(text)).toEqual([]);
  });

  it.each([
    ["- improved: something.", 1],
    ["Something without a kind.", 1],
    ["- numbers: the pupa of the monarch takes longer.", 1],
    [
      "- numbers: the pupa takes\n  from 120.1 to 129.7 degree-days, because it was refitted (open data, 2025).",
      0,
    ],
  ])("a planted %s", (entry, many) => {
    expect(faults(`${text}\n${entry}\n`)).toHaveLength(many);
  });
});
