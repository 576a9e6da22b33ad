import { describe, expect, it } from "vitest";
import { published, publishedDisagreements, shapes } from "../support/published.ts";

describe("fixtures/disagreements.json", () => {
  const { entries } = publishedDisagreements();

  it.each(entries.filter(({ check }) => check !== null))("$id still disagrees ($reason)", ({ check }) => {
    if (!check) throw new Error("no check");
    const found = check.days * (check.temperature - check.lower);
    expect(Math.abs(found - check.printed)).toBeGreaterThan(check.beyond);
  });

  it("names each once", () => {
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
  });
});

describe("fixtures/published", () => {
  it.each(Object.keys(shapes).filter((name): name is keyof typeof shapes => name in shapes))(
    "%s.json has its shape",
    (name) => {
      expect(published(name).title).not.toBe("");
    },
  );
});
