import { describe, expect, it } from "vitest";
import { hourlyWeather } from "../../src/rearing/release/hourly-weather.ts";
import { slotsBetween } from "../../src/rearing/release/weather-slots.ts";
import { metresPerSecond, windIn } from "../../src/rearing/release/wind-unit.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;
const fine = { at: [0, HOUR], temperature: [18, 19], wind: [2, 3], rain: [0, 0] };

describe("hourlyWeather", () => {
  it("is plain data that JSON keeps, with null for what is missing", () => {
    const weather = hourlyWeather({ ...fine, temperature: Float64Array.of(18, NaN), rainChance: [null, 5] });
    expect(weather).toEqual({
      at: [0, HOUR],
      temperature: [18, null],
      wind: [2, 3],
      rain: [0, 0],
      rainChance: [null, 5],
      cloud: null,
    });
    expect(JSON.parse(JSON.stringify(weather))).toEqual(weather);
    expect(hourlyWeather(weather)).toEqual(weather);
  });

  it.each([
    ["no rain at all", { ...fine, rain: null }, "invalid-weather", "no column of rain"],
    ["no hour", { at: [], temperature: [], wind: [], rain: [] }, "too-few-readings", "no hour"],
    ["a short column", { ...fine, wind: [2] }, "length-mismatch", "2 times and 1 values of wind"],
    ["times that stand still", { ...fine, at: [0, 0] }, "conflicting-readings", "at.1"],
    ["half hours", { ...fine, at: [0, HOUR / 2] }, "invalid-weather", "30 minutes"],
    ["every third hour", { ...fine, at: [0, 3 * HOUR] }, "invalid-weather", "3 hours apart"],
    ["a time that is none", { ...fine, at: [NaN, 0] }, "invalid-number", "at.0"],
    ["infinite wind", { ...fine, wind: [2, Infinity] }, "invalid-number", "wind.1 is Infinity"],
    [
      "negative wind",
      { ...fine, wind: [-1, 2] },
      "implausible-weather",
      "wind.0 is -1; it must be from 0 to 90",
    ],
    ["a chance over 100", { ...fine, rainChance: [5, 101] }, "implausible-weather", "rainChance.1 is 101"],
    ["°F in the column of °C", { ...fine, temperature: [64, 70] }, "implausible-weather", "-60 to 60 °C"],
  ] as const)("refuses %s", (_, columns, code, says) => {
    const refusal = refusalOf(() => hourlyWeather(columns));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(says);
  });
});

describe("slotsBetween", () => {
  it("shows gaps as hours without weather and nothing outside the weather", () => {
    const weather = hourlyWeather({
      at: [0, HOUR, 4.5 * HOUR],
      temperature: [1, 2, 3],
      wind: [0, 0, 0],
      rain: [0, 0, 0],
    });
    const seen = (from: number, before: number) =>
      slotsBetween(weather, from * HOUR, before * HOUR).map((slot) => [
        slot.from / HOUR,
        slot.to / HOUR,
        slot.weather?.temperature ?? null,
      ]);
    expect(seen(-5, 50)).toEqual([
      [0, 1, 1],
      [1, 2, 2],
      [2, 3, null],
      [3, 4, null],
      [4, 4.5, null],
      [4.5, 5.5, 3],
    ]);
    expect(seen(2.2, 4)).toEqual([[3, 4, null]]);
    expect(seen(6, 9)).toEqual([]);
  });

  it("does not walk through years of gap", () => {
    const far = 4000 * 365 * 24;
    const weather = hourlyWeather({
      at: [0, HOUR, far * HOUR],
      temperature: [1, 2, 3],
      wind: [0, 0, 0],
      rain: [0, 0, 0],
    });
    expect(slotsBetween(weather, (far - 2) * HOUR, (far + 9) * HOUR)).toHaveLength(3);
  });
});

describe("wind units", () => {
  // A nautical mile is 1852 m, a mile 1609.344 m, by definition.
  it.each([
    ["km/h", 36, 10],
    ["mph", 1, 0.44704],
    ["kn", 3600, 1852],
    ["m/s", 7, 7],
  ] as const)("%s", (unit, wind, metres) => {
    expect(metresPerSecond(wind, unit)).toBeCloseTo(metres, 10);
    expect(windIn(metres, unit)).toBeCloseTo(wind, 9);
  });
});
