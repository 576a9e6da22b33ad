import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayLength } from "../../src/diurnal/day-length.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { refusalOf } from "../support/refusal.ts";

const day = fc.integer({ min: 0, max: 3650 }).map((n) => addDays("2020-01-01", n));

describe("dayLength", () => {
  it("is 24 h under the midnight sun and 0 in the polar night, at the poles too", () => {
    expect(dayLength("2026-06-21", 70)).toBe(24);
    expect(dayLength("2026-12-21", 70)).toBe(0);
    expect([dayLength("2026-06-21", 90), dayLength("2026-06-21", -90)]).toEqual([24, 0]);
  });

  it("is 12 h 7 min at the equator all year: 12 h, refraction and half the disc", () => {
    fc.assert(
      fc.property(day, (one) => {
        // 2 × 0.833° at 15° an hour, divided by the cosine of a declination of at most 23.44°: 6.7 to 7.3
        // minutes. A day from noon to noon is up to half a minute off 24 h, its light up to a quarter.
        const extra = (dayLength(one, 0) - 12) * 60;
        expect(extra).toBeGreaterThan(6.4);
        expect(extra).toBeLessThan(7.6);
      }),
    );
  });

  it("is the other hemisphere's half a year later, within a quarter of an hour up to 45°", () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 45 }), (one, latitude) => {
        // The year's halves are not equally long, so half a year is not exactly the opposite declination.
        const difference = dayLength(one, latitude) - dayLength(addDays(one, 183), -latitude);
        expect(Math.abs(difference)).toBeLessThan(0.25);
      }),
    );
  });

  it("is never below 0, above 24 or NaN, and the longitude hardly matters", () => {
    fc.assert(
      fc.property(
        day,
        fc.integer({ min: -90, max: 90 }),
        fc.integer({ min: -180, max: 180 }),
        (one, latitude, longitude) => {
          const hours = dayLength(one, latitude, { longitude });
          expect(hours).toBeGreaterThanOrEqual(0);
          expect(hours).toBeLessThanOrEqual(24);
          if (Math.abs(latitude) <= 50)
            expect(Math.abs(hours - dayLength(one, latitude)) * 60).toBeLessThan(2.5);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("rises with the latitude in June and falls in December", () => {
    for (let latitude = -60; latitude < 60; latitude += 5) {
      expect(dayLength("2026-06-21", latitude + 5)).toBeGreaterThan(dayLength("2026-06-21", latitude));
      expect(dayLength("2026-12-21", latitude + 5)).toBeLessThan(dayLength("2026-12-21", latitude));
    }
  });

  it.each([
    [() => dayLength("2026-02-30", 40), "invalid-day"],
    [() => dayLength("2026-02-20", 91), "invalid-option"],
    [() => dayLength("2026-02-20", Number.NaN), "invalid-number"],
    [() => dayLength("2026-02-20", 40, { longitude: 181 }), "invalid-option"],
  ])("refuses %s", (call, code) => {
    expect(refusalOf(call).code).toBe(code);
  });
});
