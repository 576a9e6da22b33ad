import { describe, expect, test } from "vitest";
import { readDailyCsv, readLog, readReadingsCsv } from "../../src/read/index.ts";
import { codes, messageOf } from "./fixture.ts";

describe("the note on columns", () => {
  test.each([
    "date,min,max",
    "date,temp_max,temp_min",
    "Day,Minimum,Maximum",
    "date,min °C,max °C",
    "date,tmin,tmax",
  ])("%s needs none", (header) => {
    const [, second = ""] = header.split(",");
    const row = second.toLowerCase().includes("max") ? "2026-05-01,24,8" : "2026-05-01,8,24";
    expect(codes(readDailyCsv(`${header}\n${row}`, { unit: "C" }).notes)).toEqual([]);
  });

  test.each(["stage,seen on,count,note", "Stage,Date seen,Number,Remarks", "stage,date,how many,fate"])(
    "%s of a log needs none",
    (header) => {
      expect(codes(readLog(`${header}\npupated,2026-07-04,2,`).notes)).toEqual([]);
    },
  );

  test.each(["time,temp °C", "timestamp,temperature (°C)", "date time,Temp C"])(
    "%s of a logger is plain, or said",
    (header) => {
      const { notes } = readReadingsCsv(`${header}\n2026-05-01 06:00,14\n2026-05-01 07:00,16`);
      // A unit without its sign is read, and said.
      expect(codes(notes)).toEqual(header.endsWith("Temp C") ? ["columns-recognised"] : []);
    },
  );

  test("names only the headers that had to be interpreted", () => {
    const daily = readDailyCsv("Datum,low,temp_max\n2026-05-01,8,24", { unit: "C" });
    expect(messageOf(daily.notes, "columns-recognised")).toBe('Columns: date from "Datum", min from "low".');
    const log = readLog("event,seen on,count,cage\npupated,2026-07-04,2,A");
    expect(messageOf(log.notes, "columns-recognised")).toBe(
      'Columns: stage from "event", cohort from "cage".',
    );
  });

  test("a plain word for something else is said: a day as the time of readings", () => {
    const { notes } = readReadingsCsv("date,temp\n2026-05-01 06:00,14\n2026-05-01 07:00,16", { unit: "C" });
    expect(messageOf(notes, "columns-recognised")).toBe('Columns: time from "date".');
  });
});
