import { describe, expect, it } from "vitest";
import {
  addDays,
  constantTemperature,
  dailyTemperatures,
  dayNumber,
  findSpecies,
  forecast,
  lastDay,
} from "../../src/index.ts";
import { readTemperatures } from "../../src/read/index.ts";
import {
  DAY_MS,
  civilDayOf,
  formatInstant,
  instantsAt,
  localClock,
  startOfDay,
} from "../../src/time/zone.ts";
import { refusalOf } from "../support/refusal.ts";

/** Days on which clocks were changed, with how long they were in hours: IANA time zone database, as the engine has it. */
const CHANGES = [
  ["America/New_York", "2026-03-08", 23],
  ["America/New_York", "2026-11-01", 25],
  ["Europe/Berlin", "2026-03-29", 23],
  ["Europe/Berlin", "2026-10-25", 25],
  ["Australia/Lord_Howe", "2026-04-05", 24.5],
  ["Australia/Lord_Howe", "2026-10-04", 23.5],
  ["America/Santiago", "2025-09-07", 23],
  ["America/Santiago", "2026-04-04", 25],
  ["Pacific/Apia", "2011-12-29", 24],
  ["Pacific/Apia", "2011-12-30", 0],
  ["Pacific/Apia", "2011-12-31", 24],
  ["Africa/Casablanca", "2024-03-10", 25],
  ["Africa/Casablanca", "2024-04-14", 23],
  ["Pacific/Kiritimati", "2026-06-01", 24],
] as const;

describe("days on which clocks are changed", () => {
  it.each(CHANGES)("%s, %s has %f hours", (zone, day, hours) => {
    const [begin, end] = [startOfDay(day, zone), startOfDay(addDays(day, 1), zone)];
    expect((end - begin) / 3_600_000).toBe(hours);
    for (let at = begin; at < end; at += 900_000) {
      expect(civilDayOf(at, zone)).toBe(day);
      // What a clock shows leads back to the moment, in the hour lived twice to two of which it is one.
      expect(instantsAt(localClock(at, zone), zone)).toContain(at);
      expect(Date.parse(formatInstant(at, zone))).toBe(at);
    }
  });

  it.each(CHANGES.filter(([, , hours]) => hours > 0))(
    "%s, %s: a held temperature gives heat by the hours that pass",
    (zone, day, hours) => {
      const { tables } = forecast({
        lifeCycle: findSpecies("monarch"),
        found: { stage: "egg", on: `${addDays(day, -2)}T12:00`, age: "new" },
        temperatures: constantTemperature(21.5),
        zone,
      });
      const [table] = tables;
      const at = table?.days.indexOf(day) ?? -1;
      expect(table?.degreeDays[at]).toBeCloseTo(((21.5 - (table?.lower ?? 0)) * hours) / 24, 9);
    },
  );

  it("a time that clocks skip is refused by its place and zone", () => {
    const error = refusalOf(() =>
      forecast({
        lifeCycle: findSpecies("monarch"),
        found: { stage: "egg", on: "2026-10-04T02:15" },
        temperatures: constantTemperature(24),
        zone: "Australia/Lord_Howe",
      }),
    );
    expect(error.message).toContain("a time that clocks in Australia/Lord_Howe skipped");
    const skipped = "time,temp C\n2011-12-29 23:00,14\n2011-12-30 12:00,16\n2011-12-31 00:00,15";
    expect(refusalOf(() => readTemperatures(skipped, { zone: "Pacific/Apia" })).code).toBe(
      "skipped-local-time",
    );
  });

  it.each(["Mars/Olympus", "__proto__", "", " ", "UTC\0", "Europe/Berlin ", "GMT+25", "../UTC"])(
    "the zone %j is refused",
    (zone) => {
      const input = { lifeCycle: findSpecies("monarch"), found: { stage: "egg", on: "2026-06-08" } as const };
      expect(refusalOf(() => forecast({ ...input, temperatures: constantTemperature(24), zone })).code).toBe(
        "invalid-zone",
      );
    },
  );
});

describe("the ends of the calendar", () => {
  it("the years run from 0001 to 9999, with their leap days", () => {
    expect(addDays("9999-12-30", 1)).toBe("9999-12-31");
    expect(addDays("0001-01-02", -1)).toBe("0001-01-01");
    expect(refusalOf(() => addDays("9999-12-31", 1)).code).toBe("invalid-day");
    expect(refusalOf(() => addDays("0001-01-01", -1)).code).toBe("invalid-day");
    expect(dayNumber("2000-03-01") - dayNumber("2000-02-28")).toBe(2);
    for (const day of ["1900-02-29", "2023-02-29", "2100-02-29", "0000-01-01"])
      expect(refusalOf(() => dayNumber(day)).code).toBe("invalid-day");
  });

  it("a series that would pass the last day is refused, one up to it is not", () => {
    expect(lastDay(dailyTemperatures("9999-12-30", [8, 9], [20, 21]))).toBe("9999-12-31");
    expect(refusalOf(() => dailyTemperatures("9999-12-31", [8, 9], [20, 21])).code).toBe("invalid-day");
    expect(
      readTemperatures("date,min,max\n0001-01-01,8,20\n0001-01-02,9,21", { unit: "C" }).series,
    ).toMatchObject({ start: "0001-01-01" });
  });

  it.each(["0001-01-01", "9999-12-31"])("a forecast from %s is made, or refused by the calendar", (on) => {
    const input = {
      lifeCycle: findSpecies("monarch"),
      found: { stage: "egg", on } as const,
      temperatures: constantTemperature(24),
    };
    try {
      for (const zone of [null, "America/New_York"])
        expect(forecast({ ...input, zone }).stages).not.toEqual([]);
    } catch (error) {
      expect(error).toMatchObject({ code: "invalid-day" });
    }
  });

  it("days count as days of 24 hours without a zone", () => {
    expect(startOfDay("2026-03-09", null) - startOfDay("2026-03-08", null)).toBe(DAY_MS);
  });
});
