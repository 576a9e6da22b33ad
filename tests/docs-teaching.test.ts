import { existsSync, readFileSync, readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";

const teaching = new URL("../docs/teaching/", import.meta.url);
const notebooks = readdirSync(new URL("../notebooks/", import.meta.url))
  .filter((name) => name.endsWith(".html"))
  .map((name) => name.replace(/\.html$/, ""));

describe("docs/teaching", () => {
  const index = readFileSync(new URL("index.md", teaching), "utf8");

  it.each(notebooks)("has a sheet for the notebook %s, and names it in its order", (name) => {
    expect(existsSync(new URL(`${name}.md`, teaching))).toBe(true);
    expect(index).toMatch(new RegExp(`^\\d\\. (\\[${name}\\]|\`${name}\`)`, "m"));
  });

  it.each(notebooks)("the sheet for %s says which file, and that cautions apply", (name) => {
    const sheet = readFileSync(new URL(`${name}.md`, teaching), "utf8");
    expect(sheet).toContain(name);
    expect(sheet.toLowerCase()).toContain("caution");
  });
});
