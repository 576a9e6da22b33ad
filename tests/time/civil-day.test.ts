import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { addDays, civilDay, dayNumber, dayOfYear, daysInMonth } from "../../src/time/civil-day.ts";

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
