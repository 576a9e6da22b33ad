import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  extremesOfHours,
  hourlyDegreeDays,
  hoursTable,
  markdownTable,
  methodDegreeDays,
  seattleNormals,
} from "./hours.ts";

const year = seattleNormals();
const extremes = extremesOfHours(year);

/** Cells of a table of Markdown, whatever its spacing. */
function cellsOf(table: string): string[][] {
  return table
    .trim()
    .split("\n")
    .filter((line) => !/^[|\s-]+$/.test(line))
    .map((line) =>
      line
        .trim()
        .slice(1, -1)
        .split("|")
        .map((cell) => cell.trim()),
    );
}

describe("the hourly normals", () => {
  it("are 8759 hours of one year, the first day short of its first hour", () => {
    // vega-datasets 3.2.1, counted: open data.
    expect(year.temperature).toHaveLength(8759);
    expect(year.day.filter((day) => day === "2010-01-01")).toHaveLength(23);
    expect(extremes.min).toHaveLength(365);
  });

  // Computed elsewhere from the same file by another program: derived, so a regression check and no external
  // one. Percentages to the printed tenth.
  it.each([
    [10, 1033.29, [5.4, 4.0, 1.2, 9.8]],
    [5, 2268.07, [4.5, 4.1, 3.6, 5.5]],
    [12, 693.43, [6.5, 4.2, -0.2, 13.6]],
  ])("come to the degree-days known for base %d °C", (base, hourly, percents) => {
    const sum = hourlyDegreeDays(year, base);
    expect(Math.abs(sum - hourly)).toBeLessThanOrEqual(0.005);
    const methods = ["single-sine", "single-triangle", "average", "clamped-average"] as const;
    methods.forEach((method, i) => {
      const percent = (methodDegreeDays(extremes, method, base) / sum - 1) * 100;
      expect(Math.abs(percent - (percents[i] ?? Number.NaN))).toBeLessThanOrEqual(0.05);
    });
  });

  it.each([
    ["single-sine", 1089.4],
    ["single-triangle", 1074.53],
    ["average", 1046.15],
    ["clamped-average", 1134.25],
  ] as const)("give %s the %d degree-days known for base 10 °C", (method, sum) => {
    expect(Math.abs(methodDegreeDays(extremes, method, 10) - sum)).toBeLessThanOrEqual(0.005);
  });
});

describe("docs/explanation/methods-hours.md", () => {
  it("has the table that the report prints", () => {
    const page = readFileSync(new URL("../../docs/explanation/methods-hours.md", import.meta.url), "utf8");
    const table = /<!-- npm run report:hours -->([\s\S]*?)<!-- end of the generated table -->/.exec(
      page,
    )?.[1];
    expect(cellsOf(table ?? "")).toEqual(hoursTable(year));
    expect(cellsOf(markdownTable(hoursTable(year)))).toEqual(hoursTable(year));
  });
});
