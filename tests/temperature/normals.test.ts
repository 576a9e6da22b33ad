import { mean } from "d3-array";
import { describe, expect, it } from "vitest";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { normalTemperatures, normalsFor, normalsOf } from "../../src/temperature/normals.ts";
import { addDays, dayOfYear } from "../../src/time/civil-day.ts";
import { refusalOf } from "../support/refusal.ts";

/** Years of invented temperatures: a season, and something that differs between years. */
function years(start: string, count: number, missing: (i: number) => boolean = () => false) {
  const min = Array.from({ length: count }, (_, i) =>
    missing(i) ? Number.NaN : 5 + 10 * Math.sin(i / 58) + ((i * 7919) % 13) / 5,
  );
  return dailyTemperatures(
    start,
    min,
    min.map((one) => one + 9),
  );
}

describe("normalsOf", () => {
  const past = years("2020-01-01", 366 + 365 + 365 + 365 + 366);

  it.each([1, 5, 60, 200, 359, 366])("averages day %d with a week to either side, over all years", (day) => {
    // By brute force: the distance on a ring of 366 days.
    const near = Array.from(past.min).filter((_, i) => {
      const distance = Math.abs(dayOfYear(addDays(past.start, i)) - day);
      return Math.min(distance, 366 - distance) <= 7;
    });
    expect(normalsOf(past).min[day - 1]).toBeCloseTo(mean(near) ?? Number.NaN, 10);
  });

  it("has a value for each of 366 days, and counts the days it rests on", () => {
    const normals = normalsOf(past);
    expect([normals.min.length, normals.max.length, normals.daysUsed]).toEqual([366, 366, past.min.length]);
    expect(normals.max.every((max, i) => Math.abs(max - (normals.min[i] ?? 0) - 9) < 1e-9)).toBe(true);
  });

  it("leaves missing days out instead of counting them as 0", () => {
    const holed = normalsOf(years("2020-01-01", 731, (i) => i % 3 === 0));
    expect(holed.daysUsed).toBe(731 - 244);
    expect(holed.min.every(Number.isFinite)).toBe(true);
  });

  it("needs the whole year, and says which day it lacks", () => {
    const refusal = refusalOf(() => normalsOf(years("2025-06-01", 30)));
    expect(refusal.message).toContain("day 1 of the year has no reading within 7 days");
    expect(refusal.code).toBe("no-temperatures");
    expect(refusalOf(() => normalsOf(years("2025-01-01", 365), 0)).message).toContain("day 366 of the year");
  });

  it.each([-1, 1.5, 183, Number.NaN])("refuses a half width of %d days", (halfWidth) => {
    expect(refusalOf(() => normalsOf(past, halfWidth)).message).toBe(
      `halfWidth is ${halfWidth}; it must be a whole number of days from 0 to 182.`,
    );
  });
});

describe("normalTemperatures", () => {
  const normals = normalsOf(years("2020-01-01", 1096));

  it("lays normals over civil days, over 29 February and the turn of the year", () => {
    const series = normalTemperatures(normals, "2027-12-30", "2028-03-01");
    expect(series.min).toHaveLength(63);
    expect(new Set(series.origin)).toEqual(new Set(["normal"]));
    expect(series.min[2]).toBe(normals.min[0]);
    expect(series.min[61]).toBe(normalsFor(normals, "2028-02-29").min);
    expect(normalsFor(normals, "2028-02-29").min).toBe(normals.min[59]);
  });

  it.each([
    ["2026-05-02", "2026-05-01", "invalid-option", "to is 2026-05-01, before from 2026-05-02"],
    ["2023-02-29", "2026-05-01", "invalid-day", 'from is "2023-02-29"'],
  ])("refuses %s to %s", (from, to, code, text) => {
    const refusal = refusalOf(() => normalTemperatures(normals, from, to));
    expect(refusal.message).toContain(text);
    expect(refusal.code).toBe(code);
  });
});
