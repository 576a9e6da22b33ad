import { describe, expect, test } from "vitest";
import { readReadingsCsv, readTemperatures } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf, vegaDataset } from "./fixture.ts";

const rows = (...lines: string[]): string => ["time,temp °C", ...lines].join("\n");
const utc = (text: string): number => Date.parse(text);

describe("readReadingsCsv", () => {
  test("a logger's export: title, offset and unit in the header, 12-hour times, event rows", () => {
    const { series, notes, format } = readTemperatures(fixture("read/shelf-logger.csv"));
    expect(format).toBe("readings-csv");
    expect(series.kind === "readings" && series.clock).toBe("utc");
    expect(series.kind === "readings" && [...series.at]).toEqual([
      utc("2026-05-13T03:30Z"),
      utc("2026-05-13T04:00Z"),
      utc("2026-05-13T05:00Z"),
    ]);
    expect(
      series.kind === "readings" && [...series.temperature].map((value) => Number(value.toFixed(6))),
    ).toEqual([22, 21.5, 21]);
    expect(codes(notes)).toEqual([
      "lines-skipped",
      "columns-recognised",
      "columns-ignored",
      "date-order-deduced",
      "unit-converted",
      "empty-cells",
      "faulty-readings",
      "offset-from-header",
    ]);
    expect(messageOf(notes, "offset-from-header")).toContain("UTC-04:00");
    expect(messageOf(notes, "faulty-readings")).toContain("row 5");
  });

  test("without zone and offset the clock is local", () => {
    const { series } = readReadingsCsv(rows("2026-05-01 06:00,14", "2026-05-01 07:00,16"));
    expect(series.clock).toBe("local");
    expect(series.at[0]).toBe(utc("2026-05-01T06:00Z"));
  });

  test("with a zone, or with offsets, it is UTC", () => {
    const zoned = readReadingsCsv(rows("2026-05-01 06:00,14", "2026-05-01 07:00,16"), {
      zone: "America/New_York",
    });
    expect([zoned.series.clock, zoned.series.at[0]]).toEqual(["utc", utc("2026-05-01T10:00Z")]);
    const offsets = readReadingsCsv(rows("2026-05-01T06:00-04:00,14", "2026-05-01T11:00Z,16"));
    expect([offsets.series.clock, ...offsets.series.at]).toEqual([
      "utc",
      utc("2026-05-01T10:00Z"),
      utc("2026-05-01T11:00Z"),
    ]);
  });

  test("some stamps with an offset and some without need a zone", () => {
    const text = rows("2026-05-01T06:00-04:00,14", "2026-05-01T07:00,16");
    expect(refusalOf(() => readReadingsCsv(text))).toMatchObject({
      code: "zone-needed",
      path: ["row", 3, "time"],
    });
    expect(readReadingsCsv(text, { zone: "America/New_York" }).series.at[1]).toBe(utc("2026-05-01T11:00Z"));
  });

  test("date and time in separate columns", () => {
    const { series } = readReadingsCsv("Date,Time,T (°C)\n2026-05-01,6:00 AM,14\n2026-05-01,24:00,16");
    expect([...series.at]).toEqual([utc("2026-05-01T06:00Z"), utc("2026-05-02T00:00Z")]);
    const error = refusalOf(() =>
      readReadingsCsv("Date,Time,T (°C)\n2026-05-01,noon,14\n2026-05-01,7:00,16"),
    );
    expect(error).toMatchObject({ code: "invalid-instant", path: ["row", 2, "Time"] });
  });

  test("a stamp column beside date and time is refused until one is named", () => {
    const text =
      "timestamp,date,time,temp C\n2026-05-01 06:00,2026-05-01,06:00,14\n2026-05-01 07:00,2026-05-01,07:00,16";
    expect(refusalOf(() => readReadingsCsv(text)).code).toBe("ambiguous-column");
    expect(readReadingsCsv(text, { columns: { time: "timestamp" } }).series.at).toHaveLength(2);
  });

  test.each(["2026-05-01", "2026-05-01 25:00", "2026-05-01 13:00 PM", "06:00"])(
    "%j is not a stamp",
    (stamp) => {
      const error = refusalOf(() => readReadingsCsv(rows("2026-05-01 05:00,14", `${stamp},16`)));
      expect(error.path).toEqual(["row", 3, "time"]);
      expect(["invalid-instant", "invalid-day"]).toContain(error.code);
    },
  );

  test.each([
    ["°C", "85.0"],
    ["°C", "-127"],
    ["°F", "185"],
    ["°F", "-196.6"],
  ])("a probe that was not read: %s %s is left out and noted", (unit, value) => {
    const text = `time,temp ${unit}\n2026-05-01 06:00,34\n2026-05-01 06:10,${value}\n2026-05-01 06:20,35`;
    const { series, notes } = readReadingsCsv(text);
    expect(series.at).toHaveLength(2);
    expect(messageOf(notes, "faulty-readings")).toContain("row 3");
  });

  test("85 in a file without a unit may be a warm day in °F: refused", () => {
    const error = refusalOf(() => readReadingsCsv("time,temp\n2026-05-01 06:00,58\n2026-05-01 12:00,85"));
    expect(error.message).toContain("say unit F if it is Fahrenheit");
  });

  test("sorted, repeated, contradicted", () => {
    const { series, notes } = readReadingsCsv(
      rows("2026-05-01 08:00,3", "2026-05-01 06:00,1", "2026-05-01 07:00,2", "2026-05-01 06:00,1"),
    );
    expect([...series.temperature]).toEqual([1, 2, 3]);
    expect(codes(notes)).toEqual(["duplicate-rows", "rows-sorted"]);
    expect(messageOf(notes, "duplicate-rows")).toContain("row 5");
    const error = refusalOf(() =>
      readReadingsCsv(rows("2026-05-01 06:00,1", "2026-05-01 07:00,2", "2026-05-01 06:00,9")),
    );
    expect(error.code).toBe("conflicting-readings");
    expect(error.message).toContain("rows 2, 4");
  });

  test("gaps longer than the limit are listed", () => {
    const text = rows("2026-05-01 00:00,1", "2026-05-01 06:00,1", "2026-05-01 13:00,1");
    expect(messageOf(readReadingsCsv(text).notes, "gaps-in-readings")).toContain(
      "2026-05-01T06:00:00 to 2026-05-01T13:00:00",
    );
    const wide = readReadingsCsv(text, { longestGapHours: 8 });
    expect(codes(wide.notes)).not.toContain("gaps-in-readings");
    expect(wide.series.longestGapHours).toBe(8);
  });

  test("too few readings, none at all, header only", () => {
    expect(refusalOf(() => readReadingsCsv(rows("2026-05-01 06:00,14"))).code).toBe("too-few-readings");
    expect(refusalOf(() => readReadingsCsv(rows("2026-05-01 06:00,", "2026-05-01 07:00,NA"))).code).toBe(
      "no-temperatures",
    );
    expect(refusalOf(() => readReadingsCsv("time,temp\n")).code).toBe("no-temperatures");
  });

  test("an offset that no clock has is refused", () => {
    expect(
      refusalOf(() => readReadingsCsv(rows("2026-05-01T06:00+23:00,14", "2026-05-01T07:00+23:00,16"))).code,
    ).toBe("invalid-instant");
    expect(
      refusalOf(() => readReadingsCsv("time UTC+20,temp\n2026-05-01 06:00,14\n2026-05-01 07:00,15")).code,
    ).toBe("invalid-instant");
  });

  test("hourly normals of a whole year; the file lacks its first hour", () => {
    // 8759 rows, 1981-2010 normals dated 2010, from 01:00 on: vega-datasets 3.2.1, counted.
    const { series } = readTemperatures(vegaDataset("seattle-weather-hourly-normals.csv"), {
      unit: "C",
      zone: "Etc/GMT+8",
    });
    expect(series.kind === "readings" && [series.at.length, series.at[0]]).toEqual([
      8759,
      utc("2010-01-01T09:00Z"),
    ]);
    // The same rows on a clock that changes have one hour that never was.
    const error = refusalOf(() =>
      readTemperatures(vegaDataset("seattle-weather-hourly-normals.csv"), {
        unit: "C",
        zone: "America/Los_Angeles",
      }),
    );
    expect(error).toMatchObject({ code: "skipped-local-time", path: ["row", 1731, "date"] });
    expect(error.message).toContain("Etc/GMT+5");
  });
});

describe("the hour that clocks show twice", () => {
  // New York, 1 November 2026: clocks go back at 06:00Z from 02:00 to 01:00.
  const zone = "America/New_York";
  const stamps = ["00:30", "01:00", "01:30", "01:00", "01:30", "02:00"];
  const lines = stamps.map((time, i) => `2026-11-01 ${time},${10 + i}`);
  const expected = ["04:30", "05:00", "05:30", "06:00", "06:30", "07:00"].map((time) =>
    utc(`2026-11-01T${time}Z`),
  );

  test("is told apart by the order of the file", () => {
    const { series, notes } = readReadingsCsv(rows(...lines), { zone });
    expect([...series.at]).toEqual(expected);
    expect([...series.temperature]).toEqual([10, 11, 12, 13, 14, 15]);
    expect(messageOf(notes, "clock-change")).toContain("Rows 3 to 6");
  });

  test("also in a file that runs backwards", () => {
    const { series } = readReadingsCsv(rows(...lines.toReversed()), { zone });
    expect([...series.at]).toEqual(expected);
    expect([...series.temperature]).toEqual([10, 11, 12, 13, 14, 15]);
  });

  test("also with equal temperatures, which are two readings there", () => {
    const level = stamps.map((time) => `2026-11-01 ${time},10`);
    expect(readReadingsCsv(rows(...level), { zone }).series.at).toHaveLength(6);
    const { series, notes } = readReadingsCsv(rows(...level));
    expect(series.at).toHaveLength(4);
    expect(codes(notes)).toContain("duplicate-rows");
  });

  test("without a zone the different readings contradict each other, and the zone is the remedy", () => {
    expect(refusalOf(() => readReadingsCsv(rows(...lines))).message).toContain("give the zone");
  });

  test("a third pass does not exist", () => {
    const thrice = ["01:00", "01:00", "01:00"].map((time, i) => `2026-11-01 ${time},${10 + i}`);
    expect(refusalOf(() => readReadingsCsv(rows(...thrice), { zone })).code).toBe("conflicting-readings");
  });

  test("passes of which only one was logged stay on the first, which is said", () => {
    const { series, notes } = readReadingsCsv(
      rows("2026-11-01 00:30,9", "2026-11-01 01:30,10", "2026-11-01 02:30,11"),
      { zone },
    );
    expect(series.at[1]).toBe(utc("2026-11-01T05:30Z"));
    expect(messageOf(notes, "clock-change")).toContain("the first where nothing told");
  });
});

test("100 000 readings are read in about a second", () => {
  const lines = Array.from({ length: 100_000 }, (_, i) => {
    const stamp = new Date(Date.UTC(2024, 0, 1) + i * 300_000).toISOString().slice(0, 16).replace("T", " ");
    return `${stamp},${(20 + 5 * Math.sin(i / 50)).toFixed(2)}`;
  });
  const text = rows(...lines);
  const start = performance.now();
  const { series } = readReadingsCsv(text, { zone: "Etc/GMT+5" });
  expect(series.at).toHaveLength(100_000);
  // About 0.4 s measured; the limit only catches work that grows with the square of the rows.
  expect(performance.now() - start).toBeLessThan(10_000);
}, 30_000);
