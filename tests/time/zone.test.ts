import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { civilDay } from "../../src/time/civil-day.ts";
import {
  DAY_MS,
  HOUR_MS,
  civilDayOf,
  endOfDay,
  formatInstant,
  instantsAt,
  knownZone,
  localClock,
  noonOf,
  parseMoment,
  startOfDay,
  zoneOffset,
} from "../../src/time/zone.ts";

// temporal-polyfill is the general-purpose reference for zones, the skipped hour and the hour lived twice.
const ZONES = [
  "UTC",
  "America/New_York",
  "Europe/Berlin",
  "Australia/Lord_Howe",
  "Pacific/Apia",
  "America/St_Johns",
  "Asia/Kathmandu",
  "America/Sao_Paulo",
  "Africa/Casablanca",
];
const zone = fc.constantFrom(...ZONES);

describe("zones", () => {
  it("know the offset that Temporal knows, over two centuries", () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_208_988_800, max: 4_102_444_800 }), zone, (seconds, name) => {
        const instant = seconds * 1000;
        const reference = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(name);
        expect(zoneOffset(instant, name)).toBe(reference.offsetNanoseconds / 1e6);
      }),
    );
  });

  it("begin each day where Temporal begins it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 24_000 }), zone, (n, name) => {
        const reference = Temporal.PlainDate.from(civilDay(n)).toZonedDateTime(name);
        expect(startOfDay(n, name)).toBe(reference.epochMilliseconds);
        expect(civilDayOf(startOfDay(n, name), name)).toBe(civilDayOf(reference.epochMilliseconds, name));
      }),
      { numRuns: 300 },
    );
  });

  it("end each day where Temporal begins the next, and show noon where Temporal shows it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 24_000 }), zone, (n, name) => {
        const day = Temporal.PlainDate.from(civilDay(n));
        expect(endOfDay(n, name)).toBe(day.add({ days: 1 }).toZonedDateTime(name).epochMilliseconds);
        const noon = day.toZonedDateTime({ timeZone: name, plainTime: "12:00" }).epochMilliseconds;
        expect(noonOf(civilDay(n), name)).toBe(noon);
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    ["2026-03-08", 23, 11],
    ["2026-11-01", 25, 13],
    ["2026-07-01", 24, 12],
  ])("%s in New York has %i hours, of which %i before noon", (day, hours, before) => {
    const begin = startOfDay(day, "America/New_York");
    expect([
      (endOfDay(day, "America/New_York") - begin) / HOUR_MS,
      (noonOf(day, "America/New_York") - begin) / HOUR_MS,
    ]).toEqual([hours, before]);
    expect([endOfDay(day, null) - startOfDay(day, null), noonOf(day, null) - startOfDay(day, null)]).toEqual([
      DAY_MS,
      DAY_MS / 2,
    ]);
  });

  it("begin a day whose midnight is skipped at its first instant", () => {
    // Clocks in São Paulo went from 2017-10-14 24:00 straight to 01:00.
    expect(formatInstant(startOfDay("2017-10-15", "America/Sao_Paulo"), "America/Sao_Paulo")).toBe(
      "2017-10-15T01:00:00-02:00",
    );
  });

  it("give a day of 23 and one of 25 hours where clocks change", () => {
    const hours = (day: string, next: string) =>
      (startOfDay(next, "America/New_York") - startOfDay(day, "America/New_York")) / 3_600_000;
    expect([
      hours("2026-03-08", "2026-03-09"),
      hours("2026-11-01", "2026-11-02"),
      hours("2026-07-01", "2026-07-02"),
    ]).toEqual([23, 25, 24]);
  });

  it("find two instants in the hour lived twice and none in the skipped one", () => {
    const at = (text: string) =>
      instantsAt(Date.parse(`${text}:00Z`), "America/New_York").map((i) => new Date(i).toISOString());
    expect(at("2026-11-01T01:30")).toEqual(["2026-11-01T05:30:00.000Z", "2026-11-01T06:30:00.000Z"]);
    expect(at("2026-03-08T02:30")).toEqual([]);
    expect(at("2026-07-04T02:30")).toEqual(["2026-07-04T06:30:00.000Z"]);
  });

  it("write instants that read back the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), fc.option(zone), (seconds, name) => {
        const text = formatInstant(seconds * 1000, name);
        expect(parseMoment(text, name, ["on"]).instant).toBe(seconds * 1000);
      }),
    );
  });

  it("leave a local clock as it is", () => {
    expect([localClock(5, null), instantsAt(5, null), startOfDay("1970-01-02", null)]).toEqual([
      5,
      [5],
      DAY_MS,
    ]);
    expect(formatInstant(0, null)).toBe("1970-01-01T00:00:00");
  });

  it.each([
    ["2026-07-04T24:00", null, "invalid-instant", "00:00 to 23:59"],
    ["2026-03-08T02:30", "America/New_York", "invalid-instant", "skipped"],
    ["2026-07-04T12:00Z", null, "zone-needed", "no time zone was given"],
    ["2026-07-04T12:00+99:00", "Asia/Manila", "invalid-instant", "no clock was ever more than 16 hours"],
    ["2026-07-04T12:00-16:01", "Asia/Manila", "invalid-instant", "no clock was ever more than 16 hours"],
    ["noon", null, "invalid-day", "YYYY-MM-DD"],
    ["2026-02-29T12:00", null, "invalid-day", "28 days"],
  ])("refuse the moment %s in zone %s", (text, name, code, why) => {
    expect(() => parseMoment(text, name, ["on"])).toThrow(why);
    expect(() => parseMoment(text, name, ["on"])).toThrow(expect.objectContaining({ code }));
  });

  it("take the offsets of old local times", () => {
    const { instant, day } = parseMoment("1840-07-04T12:00-15:56", "Asia/Manila", ["on"]);
    expect([instant, day]).toEqual([Date.parse("1840-07-05T03:56Z"), "1840-07-04"]);
  });

  it.each([undefined, null, 7])("refuse %j for a zone: the machine's own is none that was named", (zone) => {
    expect(() => knownZone(zone as never)).toThrow(`zone is ${zone}, which is not a known time zone`);
  });

  it("refuse a zone that does not exist", () => {
    expect(() => knownZone("Mars/Olympus")).toThrow('zone is "Mars/Olympus", which is not a known time zone');
  });
});
