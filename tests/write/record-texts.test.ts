import { describe, expect, it } from "vitest";
import { expectedAdults } from "../../src/cohort/expected-adults.ts";
import { lifeTable } from "../../src/cohort/life-table.ts";
import type { LogTable } from "../../src/cohort/life-table-from-log.ts";
import type { LeadScores } from "../../src/evaluate/hindsight/hindcast-scores.ts";
import { readDailyCsv } from "../../src/read/index.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { RoomRelation } from "../../src/temperature/room-relation.ts";
import { dailyTemperaturesCsv } from "../../src/write/tables/daily-temperatures-csv.ts";
import { hindcastText } from "../../src/write/pages/hindcast-text.ts";
import { roomText } from "../../src/write/pages/room-text.ts";
import { survivalText } from "../../src/write/pages/survival-text.ts";
import { expectPlainPage } from "./plain-text.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");

const score: LeadScores = {
  lead: 0,
  runs: 1234,
  scored: 1200,
  beyondRecord: 34,
  closedTooEarly: 2,
  biasDays: -0.04,
  meanAbsoluteErrorDays: 12.34,
  crpsDays: 9.876,
  coverage: 0.8,
  skillOnUsualDays: -1.25,
  skillOnClimatology: 0,
};
const setting = { animal: "Monarch", from: "2012-01-01", to: "2015-12-31", every: 1, months: [1, 12] };

describe("hindcastText", () => {
  it("has a row for each lead and leaves no run unsaid", () => {
    const text = hindcastText([score, { ...score, lead: 21, skillOnClimatology: 0.6 }], setting);
    expectPlainPage(text);
    expect(text).toMatch(/^ {2}0 +1200 +0\.0 +12\.3 +9\.88 +80 % +-1\.25 +-$/m);
    expect(text).toMatch(/^ {2}21 +1200 .* 0\.60$/m);
    expect(flat(text)).toContain("A start every day, those in Jan, Dec.");
    expect(flat(text)).toContain("The record ends before 34 of them do");
    expect(flat(text)).toContain("wrong (2 at 0 days, 2 at 21 days)");
  });

  it("says when all months and all runs are in it", () => {
    const months = Array.from({ length: 12 }, (_, i) => i + 1);
    const text = hindcastText([{ ...score, beyondRecord: 0 }], { ...setting, every: 7, months });
    expect(flat(text)).toContain("A start every 7 days, those in all months.");
    expect(flat(text)).toContain("none ends after the record");
  });
});

describe("hindcastText of few", () => {
  it("tells one run and one day as one", () => {
    const few = { ...score, lead: 1, runs: 1, scored: 0, beyondRecord: 1 };
    const text = flat(hindcastText([few], setting));
    expect(text).toContain("1 run at each number of days known");
    expect(text).toContain("The record ends before 1 of them does, so that it has no score");
    expect(text).toContain("(2 at 1 day)");
  });
});

describe("survivalText", () => {
  it("prints shares, intervals and who came later", () => {
    const rows = lifeTable([
      { stage: "egg", entered: 20, died: 2 },
      { stage: "larva", entered: 21, died: 9 },
    ]);
    const table: LogTable = { rows, reached: 12, unaccounted: [], remarks: ["3 in instar-1; who knows."] };
    const expected = expectedAdults(20, [0.5]);
    const text = survivalText(table, { found: { stage: "egg", count: 20 }, expected });
    expectPlainPage(text);
    expect(text).toMatch(/^ {2}egg +20 +2 +0 +90 % +68 to 99 +90 % +68 to 99$/m);
    expect(flat(text)).toContain("3 came to the cohort as larva.");
    expect(flat(text)).toContain("3 in first instar; who knows.");
    expect(flat(text)).toContain("Of 20 eggs: about 10.0 on average, and 6 to 14 with a chance of 95 %.");
  });

  it("needs no advice on the dead where none died", () => {
    const rows = lifeTable([{ stage: "pupa", entered: 12_345, died: 0 }]);
    const table: LogTable = { rows, reached: 1, unaccounted: [], remarks: [] };
    const text = survivalText(table, { found: { stage: "pupa", count: 1 }, expected: null });
    expectPlainPage(text);
    expect(text).not.toContain("sick");
    expect(flat(text)).toContain("1 has become adult");
    expect(flat(text)).toContain("That cannot be said of 1 pupa");
  });
});

describe("survivalText of adults", () => {
  it("names them as such", () => {
    const rows = lifeTable([{ stage: "pupa", entered: 3, died: 0 }]);
    const table: LogTable = { rows, reached: 3, unaccounted: [], remarks: [] };
    const of = (count: number): string =>
      flat(survivalText(table, { found: { stage: "adult", count }, expected: null }));
    expect(of(2)).toContain("said of 2 adults:");
    expect(of(1)).toContain("said of 1 adult:");
  });
});

const estimate = (value: number) => ({ value, standardError: 0.1 });
const relation = (level: number, damping: number, rangeRatio: number): RoomRelation => ({
  stationMean: 20,
  level: estimate(level),
  damping: estimate(damping),
  rangeRatio: estimate(rangeRatio),
  offset: estimate(0),
  residualDeviation: 0.6,
  autocorrelation: 0,
  days: 14,
  from: "2014-06-01",
  to: "2014-06-14",
  seen: { low: 15, high: 25 },
  maxAbove: 0,
  notes: [],
});

describe("roomText", () => {
  const days = dailyTemperatures("2014-06-01", [12, Number.NaN, -3], [20, Number.NaN, 14], "estimated");

  it.each([
    [
      22,
      0.2,
      0.3,
      "2.0 °C warmer",
      "hardly follows the weather, and its nights and days are closer together",
    ],
    [
      19,
      0.6,
      1,
      "1.0 °C colder",
      "follows the weather, but less far, and its nights and days are as far apart",
    ],
    [
      20,
      1,
      1.5,
      "as warm as the station on such a day",
      "follows the weather degree by degree, and its nights and days are further",
    ],
    [19.97, 1.4, 1, "as warm as the station", "goes further than the weather"],
  ])("says in words what %d °C, %d and %d mean", (level, damping, range, ...says) => {
    const text = roomText(relation(level, damping, range), days);
    expectPlainPage(text);
    for (const words of says) expect(flat(text)).toContain(words);
    // It is for programs too, which have no options of a command line.
    expect(text).not.toContain("--");
  });

  it("tells of the days estimated, without those that the station lacks", () => {
    const text = flat(roomText(relation(22, 0.5, 0.5), days));
    expect(text).toContain(
      "2 days from Sun 1 Jun 2014 to Tue 3 Jun 2014, 10.8 °C on average. Lowest -3.0 °C on Tue 3 Jun 2014, highest 20.0 °C on Sun 1 Jun 2014. 1 day that the station lacks is left out.",
    );
  });
});

describe("roomText of one day", () => {
  it("tells it as one, and has no minus before a zero", () => {
    const text = flat(roomText(relation(-0.04, 0.5, 0.5), dailyTemperatures("2014-06-30", [-0.02], [-0.01])));
    expect(text).toContain("1 day from Mon 30 Jun 2014");
    expect(text).not.toMatch(/-0\.0\b/);
  });
});

describe("dailyTemperaturesCsv", () => {
  it("is read back to hundredths of a degree, gaps included and without a remark but on them", () => {
    const days = dailyTemperatures("2026-02-27", [1.234, Number.NaN, -0.001], [9.876, Number.NaN, 0]);
    const { series, notes } = readDailyCsv(dailyTemperaturesCsv(days));
    expect(dailyTemperaturesCsv(days)).toMatch(
      /^date,min °C,max °C\r\n2026-02-27,1\.23,9\.88\r\n2026-02-28,,\r\n/,
    );
    expect(series.start).toBe("2026-02-27");
    expect(dailyTemperaturesCsv(days)).toContain("2026-03-01,0.00,0.00");
    expect([...series.min]).toEqual([1.23, Number.NaN, 0]);
    expect([...series.max]).toEqual([9.88, Number.NaN, 0]);
    expect(notes.map(({ code }) => code)).toEqual(["empty-cells", "missing-days"]);
  });
});
