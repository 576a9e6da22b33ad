import { describe, expect, test } from "vitest";
import { temperatureRows } from "../../src/plot/index.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { newYork } from "./season.ts";

describe("temperatureRows", () => {
  test("gives the extremes of a daily series, a day without a reading as null", () => {
    const series = dailyTemperatures("2026-02-27", [1, Number.NaN, 0], [9, 8, 0]);
    expect(temperatureRows(series)).toEqual([
      { day: "2026-02-27", min: 1, max: 9, origin: "observed" },
      { day: "2026-02-28", min: null, max: null, origin: null },
      { day: "2026-03-01", min: 0, max: 0, origin: "observed" },
    ]);
  });

  test("takes the days asked for, and shows days outside the series as without a reading", () => {
    const series = dailyTemperatures("2026-05-02", [8], [24]);
    const rows = temperatureRows(series, { from: "2026-05-01", to: "2026-05-03" });
    expect(rows.map((row) => row.max)).toEqual([null, 24, null]);
  });

  // NOAA via vega-datasets 3.2.1, weather.csv, New York 2014-06-18: 32.8 and 23.3 °C.
  test("carries a published reading over unchanged", () => {
    expect(temperatureRows(newYork, { from: "2014-06-18", to: "2014-06-18" })).toEqual([
      { day: "2014-06-18", min: 23.3, max: 32.8, origin: "observed" },
    ]);
  });

  test("shows the lowest and the highest reading of each day of the zone", () => {
    // 03:00 UTC on 4 July is still 3 July in New York.
    const at = ["2026-07-03T16:00Z", "2026-07-04T03:00Z", "2026-07-04T16:00Z"].map((text) =>
      Date.parse(text),
    );
    const rows = temperatureRows(temperatureReadings(at, [30, 20, 25]), { zone: "America/New_York" });
    expect(rows).toEqual([
      { day: "2026-07-03", min: 20, max: 30, origin: "observed" },
      { day: "2026-07-04", min: 25, max: 25, origin: "observed" },
    ]);
  });

  test("of joined series shows the first that has the day", () => {
    const measured = dailyTemperatures("2026-05-01", [10, Number.NaN], [20, Number.NaN]);
    const rows = temperatureRows(joinTemperatures(measured, constantTemperature(22)), {
      from: "2026-05-01",
      to: "2026-05-02",
    });
    expect(rows.map(({ max, origin }) => [max, origin])).toEqual([
      [20, "observed"],
      [22, "assumed"],
    ]);
  });

  test("refuses readings on a UTC clock without a zone, and an endless range", () => {
    const readings = temperatureReadings([0, 3_600_000], [20, 21]);
    expect(() => temperatureRows(readings)).toThrow(
      "the readings are on a UTC clock; name the zone whose days to show.",
    );
    expect(() => temperatureRows(constantTemperature(25), { from: "2026-05-01" })).toThrow(
      "a temperature that is held for ever has no first or last day; name from and to.",
    );
  });

  test("is plain data", () => {
    const rows = temperatureRows(newYork, { from: "2014-06-12", to: "2014-06-20" });
    expect(JSON.parse(JSON.stringify(rows))).toEqual(rows);
  });
});
