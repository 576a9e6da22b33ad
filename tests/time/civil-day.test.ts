import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { addDays, civilDay, civilDays, dayNumber, dayOfYear, daysInMonth } from "../../src/time/civil-day.ts";

describe("civil days", () => {
  it("count as Temporal counts, from year 0001 to 9999", () => {
    // temporal-polyfill is the general-purpose reference for ISO 8601 calendar arithmetic.
    fc.assert(
      fc.property(fc.integer({ min: -719_162, max: 2_932_896 }), (n) => {
        const reference = Temporal.PlainDate.from("1970-01-01").add({ days: n });
        expect(civilDay(n)).toBe(reference.toString());
        expect(dayNumber(civilDay(n))).toBe(n);
        expect(dayOfYear(civilDay(n))).toBe(reference.dayOfYear);
        expect(daysInMonth(reference.year, reference.month)).toBe(reference.daysInMonth);
      }),
    );
    expect([civilDay(-719_162), civilDay(2_932_896)]).toEqual(["0001-01-01", "9999-12-31"]);
  });

  it("one after another are those that each number has, in any year", () => {
    // Centuries that have a leap day and that have none, and both ends of the calendar, are asked for by name.
    const ends = ["0001-01-01", "1900-02-20", "2000-02-20", "2023-12-31", "9999-01-01"].map((day) =>
      dayNumber(day),
    );
    const first = fc.oneof(fc.integer({ min: -719_162, max: 2_932_896 - 800 }), fc.constantFrom(...ends));
    fc.assert(
      fc.property(first, fc.integer({ min: 0, max: 800 }), (from, asked) => {
        const count = Math.min(asked, 2_932_896 - from + 1);
        expect(civilDays(from, count)).toEqual(Array.from({ length: count }, (_, i) => civilDay(from + i)));
      }),
    );
    expect(civilDays(0, -1)).toEqual([]);
  });

  it.each([
    [2_932_896, 2],
    [-719_163, 3],
    [0.5, 2],
    [0, 1e12],
    [0, Number.NaN],
  ])("one after another stay within the calendar: %d and %d more", (first, count) => {
    expect(() => civilDays(first, count)).toThrow(expect.objectContaining({ code: "invalid-day" }));
  });

  it("cross the leap day", () => {
    expect(addDays("2024-02-28", 1)).toBe("2024-02-29");
    expect(addDays("2023-02-28", 1)).toBe("2023-03-01");
    expect(addDays("2000-03-01", -1)).toBe("2000-02-29");
    expect(addDays("1900-03-01", -1)).toBe("1900-02-28");
  });

  it.each([
    ["2023-02-29", "that month has 28 days"],
    ["2026-13-01", "there is no month 13"],
    ["2026-04-31", "that month has 30 days"],
    ["2026-04-00", "does not exist"],
    ["0000-01-01", "years run from 0001"],
    ["04/07/2026", "must be a day written YYYY-MM-DD"],
    ["2026-7-4", "must be a day written"],
    ["", 'is "";'],
  ])("refuse %s", (text, why) => {
    expect(() => dayNumber(text, ["found", "on"])).toThrow(why);
    expect(() => dayNumber(text, ["found", "on"])).toThrow(
      expect.objectContaining({ code: "invalid-day", path: ["found", "on"] }),
    );
  });
});
