import { describe, expect, test } from "vitest";
import {
  readCohorts,
  readDailyCsv,
  readGhcnCsv,
  readHourlyWeather,
  readLog,
  readReadingsCsv,
  readTemperaturesJson,
} from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";

const HEAD = "stage,seen on,time,count,fate,not yet,corrects\n";

describe("a fault in a corrected row of a log is told at the row that it stands in", () => {
  test.each([
    ["the day", "pupa,2026-13-04,,5,,,\n,,,4,,,2", 2, "seen on"],
    ["the time", "pupa,2026-07-04,25:00,5,,,\n,,,4,,,2", 2, "time"],
    ["the count", "pupa,2026-07-04,,x,,,\n,2026-07-05,,,,,2", 2, "count"],
    ["the stage", "pope,2026-07-04,,1,,,\n,2026-07-05,,,,,2", 2, "stage"],
    ["the fate", "pupa,2026-07-04,,1,eaten,,\n,2026-07-05,,,,,2", 2, "fate"],
    ["the last look", "pupa,2026-07-04,,1,,2026-13-01,\n,2026-07-05,,,,,2", 2, "not yet"],
    ["the correction", "pupa,2026-07-04,,1,,,\n,2026-13-05,,,,,2", 3, "seen on"],
  ])("%s", (_, rows, row, column) => {
    expect(refusalOf(() => readLog(HEAD + rows)).path).toEqual(["row", row, column]);
  });
});

test("a last look after the look that found the stage is refused by row and column", () => {
  const { path, message } = refusalOf(() => readLog("stage,seen on,not yet\npupa,2026-07-04,2026-07-05"));
  expect(path).toEqual(["row", 2, "not yet"]);
  expect(message).toBe(
    'row 2, column "not yet" is "2026-07-05"; it must be before 2026-07-04, when the stage was seen.',
  );
});

describe("the two columns of days of a log have one order", () => {
  test("that one of them proves", () => {
    const { entries } = readLog("stage,seen on,not yet\npupa,13/07/2026,10/07/2026");
    expect(entries[0]).toMatchObject({ on: "2026-07-13", notYet: "2026-07-10" });
  });

  test("so that they cannot contradict each other", () => {
    const { path } = refusalOf(() =>
      readLog("stage,seen on,not yet\npupa,13/07/2026,\npupa,14/07/2026,07/13/2026"),
    );
    expect(path).toEqual(["row", 3, "not yet"]);
  });
});

test.each([
  ["a log", () => readLog("stage,seen on\npupa,2026-07-04 13:05+99:00"), ["row", 2, "seen on"]],
  [
    "a log with a column of times",
    () => readLog("stage,seen on,time\npupa,2026-07-04,13:05+15:00"),
    ["row", 2, "time"],
  ],
  [
    "cohorts",
    () => readCohorts("name,species,found,on\na,monarch,egg,2026-07-04 13:05-20:00"),
    ["row", 2, "on"],
  ],
])("an offset in %s that no clock has is refused", (_, read, path) => {
  expect(refusalOf(read).path).toEqual(path);
});

test.each([
  ["days", () => readTemperaturesJson('[{"date":"2026-13-01","min":1,"max":2}]'), "entry 0.date is"],
  [
    "cohorts",
    () => readCohorts('[{"name":"a","species":"monarch","found":"egg","on":"2026-02-30"}]'),
    "entry 0.on is",
  ],
])("a day that does not exist in a bare list of %s is refused by its entry", (_, read, says) => {
  const { code, message } = refusalOf(read);
  expect(code).toBe("invalid-day");
  expect(message).toContain(says);
});

test("a held temperature that stands for a missing one is refused as such", () => {
  const { code, message } = refusalOf(() => readTemperaturesJson('{"constant":-999}'));
  expect(code).toBe("no-temperatures");
  expect(message).toContain("constant is -999");
});

describe("a day in two rows, each with one extreme", () => {
  const head = "date,min °C,max °C\n";

  test("is joined, and told as joined", () => {
    const { series, notes } = readDailyCsv(`${head}2026-05-01,8,\n2026-05-01,,24`);
    expect([series.min[0], series.max[0]]).toEqual([8, 24]);
    expect(notes.find(({ code }) => code === "duplicate-rows")?.message).toContain("Joined row 3");
  });

  test("is refused by its rows where they cross", () => {
    const { code, message } = refusalOf(() => readDailyCsv(`${head}2026-05-01,28,\n2026-05-01,,24`));
    expect(code).toBe("min-above-max");
    expect(message).toContain("rows 2 and 3 give 2026-05-01 a minimum of 28 °C, above the maximum of 24 °C");
  });
});

describe("GHCN-Daily by station", () => {
  const line = (element: string, tenths: number): string =>
    `USW00094728,20260501,${element},${tenths},,,W,\n`;

  test("tells crossed extremes at the row of the minimum, whichever came first", () => {
    const { path } = refusalOf(() => readGhcnCsv(line("TMAX", 100) + line("TMIN", 200)));
    expect(path).toEqual(["row", 2, "TMIN"]);
  });

  test("keeps a value that a missing one follows", () => {
    const { series } = readGhcnCsv(line("TMAX", 300) + line("TMIN", 200) + line("TMIN", -9990));
    expect(series.min[0]).toBe(20);
  });
});

test("an offset behind the midnight of a day counts for the time beside it", () => {
  const { series } = readReadingsCsv(
    "date,time,temp C\n2026-05-01T00:00-04:00,06:00,14\n2026-05-01T00:00-04:00,07:00,16",
  );
  expect([series.clock, series.at[0]]).toEqual(["utc", Date.parse("2026-05-01T06:00-04:00")]);
});

test("a place with several stations in it is refused, because they would be mixed", () => {
  const text = "station,site,date,min °C,max °C\nA,x,2026-05-01,8,24\nB,x,2026-05-02,9,24";
  expect(refusalOf(() => readDailyCsv(text, { location: "x" })).message).toContain('("A", "B")');
  expect(readDailyCsv(text, { location: "B" }).series.start).toBe("2026-05-02");
});

test("a percentage is no speed of wind", () => {
  const text = "time,temp °C,wind m/s,rain mm\n2026-07-05T12:00Z,24,5%,0";
  expect(refusalOf(() => readHourlyWeather(text)).path).toEqual(["row", 2, "wind m/s"]);
});
