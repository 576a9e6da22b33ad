import { describe, expect, it } from "vitest";
import { dayLength } from "../../src/diurnal/day-length.ts";
import { sunOn } from "../../src/diurnal/sun.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import { halfLastDigit, published } from "../support/published.ts";
import { fao56Daylight, forsytheDayLength } from "../support/sun-formulas.ts";

const { daylight, sunrise } = published("day-length");

describe(`sunrise as printed (${sunrise.source})`, () => {
  it.each(sunrise.rows)("at latitude $latitude on 1 January 2002: $sunrise", (row) => {
    // Local mean solar time at longitude 0 is UTC.
    const sun = sunOn(dayNumber(sunrise.date), { latitude: row.latitude, longitude: 0 });
    const [hours = 0, minutes = 0] = row.sunrise.split(":").map(Number);
    const printed = dayNumber(sunrise.date) * 1440 + hours * 60 + minutes;
    expect(sun.kind).toBe("rises");
    if (sun.kind === "rises")
      expect(Math.abs(sun.sunrise / 60_000 - printed)).toBeLessThanOrEqual(sunrise.toleranceMinutes);
  });

  it("has all fifteen rows", () => {
    expect(sunrise.rows).toHaveLength(15);
  });
});

describe("the day length of FAO-56", () => {
  it.each(daylight)("$printed h at latitude $latitude on day $dayOfYear", (row) => {
    // The check's own formula meets the worked value, to the last printed digit of both.
    const formula = fao56Daylight(row.dayOfYear, row.latitude);
    expect(Math.abs(formula - Number(row.unrounded))).toBeLessThanOrEqual(halfLastDigit(row.unrounded));
    expect(Math.abs(formula - Number(row.printed))).toBeLessThanOrEqual(halfLastDigit(row.printed));
    // Ours must not meet it: FAO-56 takes the disc's centre and no refraction, so its day is shorter. The
    // sun needs 2 × 0.833° / (15° an hour × cos 20°) = 7.1 minutes more at this latitude. The other way
    // works FAO-56's declination of a single sine: 1 to 3 minutes too short at 20° N, so too long at 20° S.
    const ours = dayLength(addDays("2025-01-01", row.dayOfYear - 1), row.latitude);
    expect((ours - formula) * 60).toBeGreaterThan(7.1 - 3);
    expect((ours - formula) * 60).toBeLessThan(7.1 - 1);
  });

  // Differences of FAO-56 from the standard algorithm, minutes, computed elsewhere: derived.
  it.each([
    [20, 8, 10],
    [40, 10, 16],
    [60, 19, 30],
  ])("is shorter than ours by %d° N's %d to %d minutes all year", (latitude, least, most) => {
    const differences = eachDay().map(
      ({ day, dayOfYear }) => (dayLength(day, latitude) - fao56Daylight(dayOfYear, latitude)) * 60,
    );
    // Half a minute, because the minutes are whole.
    expect(Math.min(...differences)).toBeGreaterThan(least - 0.6);
    expect(Math.max(...differences)).toBeLessThan(most + 0.6);
  });
});

describe("the day length of Forsythe et al. 1995", () => {
  // How far it is from the standard algorithm, minutes, computed elsewhere: derived.
  it.each([
    [20, 1.4],
    [40, 3.1],
    [50, 4.4],
    [60, 6.5],
  ])("agrees at %d° N within %d minutes all year", (latitude, most) => {
    for (const { day, dayOfYear } of eachDay()) {
      const difference = dayLength(day, latitude) - forsytheDayLength(dayOfYear, latitude, 0.8333);
      // Another year than the one compared there, and the sun's motion between rise and set: a few seconds.
      expect(Math.abs(difference) * 60).toBeLessThan(most + 0.2);
    }
  });
});

function eachDay(): { day: string; dayOfYear: number }[] {
  return Array.from({ length: 365 }, (_, i) => ({ day: addDays("2001-01-01", i), dayOfYear: i + 1 }));
}
