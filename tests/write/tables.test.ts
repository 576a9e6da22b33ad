import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { logEntry } from "../../src/cohort/log.ts";
import { compare } from "../../src/evaluate/hindsight/compare.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { comparisonText } from "../../src/write/pages/comparison-text.ts";
import { degreeDayText } from "../../src/write/pages/degree-day-text.ts";
import { cautionsText, notesText } from "../../src/write/layout/remarks-text.ts";
import { speciesListText, speciesText } from "../../src/write/pages/species-text.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { expectPlainPage } from "./plain-text.ts";

describe("degreeDayText", () => {
  const days = accumulateDegreeDays(dailyTemperatures("2026-05-01", [20, 0], [20, 4]), { lower: 10 });

  it("has a line a day with the running total", () => {
    expect(degreeDayText(days)).toBe(
      [
        "day         degree-days °C  total",
        "2026-05-01            10.0   10.0",
        "2026-05-02             0.0   10.0",
      ].join("\n"),
    );
  });

  it("converts a sum of degrees without the offset of a temperature", () => {
    expect(degreeDayText(days, "F")).toContain("2026-05-01            18.0   18.0");
  });
});

describe("comparisonText", () => {
  const result = inventedForecast({
    temperatures: constantTemperature(25),
    found: { stage: "pupa", on: "2026-07-01T12:00", age: "new" },
  });

  it("puts what was expected beside what was seen", () => {
    const text = comparisonText(
      compare(result, [logEntry({ stage: "adult", on: "2026-07-12T12:00", count: 2 })]),
    );
    expectPlainPage(text);
    // Derived: 120.1 degree-days at 25 °C above 11.5 °C take 8.896 days, so 11 days are 2.1 late.
    expect(text).toMatch(/^ {2}adult {2} +2 {2}Fri 10 Jul {2}Sun 12 Jul +\+2\.1/m);
    expect(text.replace(/\s+/g, " ")).toContain("On average the animals were 2.1 days later than expected");
  });

  it.each([
    ["2026-07-10T09:30", "were neither late nor early"],
    ["2026-07-08T09:30", "were 2.0 days earlier than expected"],
  ])("sums up an adult seen at %s", (on, words) => {
    expect(
      comparisonText(compare(result, [logEntry({ stage: "adult", on })])).replace(/\s+/g, " "),
    ).toContain(words);
  });

  it("says why something could not be compared", () => {
    const text = comparisonText(compare(result, [logEntry({ stage: "egg", on: "2026-06-20" })]));
    expectPlainPage(text);
    expect(text).toContain("Nothing logged could be compared with the forecast.");
    expect(text.replace(/\s+/g, " ")).toContain("- egg, 2026-06-20: This stage is not ahead of the pupa");
  });

  it("gives a difference that rounds to nothing no sign", () => {
    const comparison = compare(result, [logEntry({ stage: "adult", on: "2026-07-10" })]);
    const rows = comparison.rows.map((row) => ({ ...row, errorDays: -0.04, errorDegreeDays: 0.03 }));
    const text = comparisonText({ ...comparison, rows });
    expect(text).toMatch(/ 0\.0 +0\.0 /);
    expect(text).not.toMatch(/[-+]0\.0\b/);
  });

  it("shows years where expected and seen are in different ones", () => {
    const text = comparisonText(compare(result, [logEntry({ stage: "adult", on: "2025-07-10" })]));
    expectPlainPage(text);
    expect(text).toContain("2026-07-10  2025-07-10");
  });

  it("fits 80 columns with the longest names and large numbers", () => {
    const long = inventedForecast({ temperatures: inventedDays("2026-05-01", 200) });
    const log = (["instar-4", "prepupa", "pupa", "adult"] as const).map((stage) =>
      logEntry({ stage, on: "2027-06-30", count: 12_345 }),
    );
    expectPlainPage(comparisonText(compare(long, log)));
  });
});

describe("species texts", () => {
  it("lists every species on a line", () => {
    const text = speciesListText(SPECIES);
    expectPlainPage(text);
    expect(text.trimEnd().split("\n")).toHaveLength(SPECIES.length + 1);
    for (const { species, commonName } of SPECIES) {
      expect(text).toContain(species);
      expect(text).toContain(commonName);
    }
  });

  it.each(SPECIES)("tells of $species what it needs and where each figure comes from", (lifeCycle) => {
    const text = speciesText(lifeCycle);
    expectPlainPage(text);
    const flat = text.replace(/\s+/g, " ");
    for (const { degreeDays, lower } of lifeCycle.stages) {
      expect(flat).toContain(` ${lower.value} `);
      expect(flat).toContain(`${degreeDays.source.replace(/\s+/g, " ")} [${degreeDays.mark}]`);
    }
  });
});

describe("notes and cautions", () => {
  it("are nothing at all when there are none", () => {
    expect([notesText([]), cautionsText([])]).toEqual(["", ""]);
  });
});
