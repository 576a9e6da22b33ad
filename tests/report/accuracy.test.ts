import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { accuracyPage, accuracyTables } from "./accuracy.ts";

// Every start day takes half a minute and is `npm run report`; here every 19th stands for them.
const tables = accuracyTables(19);

describe("hindcasts on the bundled records", () => {
  it("leave no run out", () => {
    for (const { season, rows } of tables) {
      for (const { runs, scored, beyondRecord } of rows) {
        expect(scored + beyondRecord).toBe(runs);
        if (season === "all year") expect(runs).toBe(Math.ceil(1461 / 19));
      }
    }
  });

  it("hold about the share in their windows that they promise", () => {
    // Aim 75 to 85 %; four years a city are too few to ask for that of every table.
    const all = tables.filter(({ season }) => season === "all year").flatMap(({ rows }) => rows);
    const mean = all.reduce((sum, { coverage }) => sum + coverage, 0) / all.length;
    expect(mean).toBeGreaterThan(0.7);
    expect(mean).toBeLessThan(0.9);
  });

  it("get better with every week that is known, and are better than the usual number of days", () => {
    for (const { season, rows } of tables) {
      const [first, , , , last] = rows;
      expect(last?.crpsDays).toBeLessThan(first?.crpsDays ?? 0);
      expect(last?.skillOnClimatology).toBeGreaterThan(0);
      if (season === "all year") for (const row of rows) expect(row.skillOnUsualDays).toBeGreaterThan(0.2);
    }
  });

  it("are what the committed page describes", () => {
    const page = readFileSync("docs/accuracy.md", "utf8");
    const words = (text: string): string => text.replace(/[|\s-]+/g, " ");
    const [before = ""] = accuracyPage([]).split("$");
    expect(words(page)).toContain(words(before).trim().slice(0, 1500));
    // Runs of the full table: every day of both records, five leads, all year and its summer.
    expect(page.match(/\| +1461 \|/g)).toHaveLength(10);
  });
});
