import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { type Arc, arcTemperature } from "../../src/diurnal/arc.ts";
import { SUN_METHODS, type SunMethod } from "../../src/diurnal/method.ts";
import type { Place } from "../../src/diurnal/place.ts";
import { sunNotes } from "../../src/diurnal/sun-notes.ts";
import { sunOn } from "../../src/diurnal/sun.ts";
import { type Timeline, timelineOf } from "../../src/diurnal/timeline.ts";
import { linearResponse } from "../../src/response/linear.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { DailyTemperatures, TemperatureSeries } from "../../src/temperature/series.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { cutoff, day, limits } from "../support/arbitraries.ts";
import { meanOver } from "../support/quadrature.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;
const ZONE = "America/New_York";
const NEW_YORK = { latitude: 40.7, longitude: -74 };
const method = fc.constantFrom(...SUN_METHODS);

function curve(
  how: SunMethod,
  series: TemperatureSeries,
  start: string,
  place: Place | null = NEW_YORK,
  zone: string | null = ZONE,
): Timeline {
  const from = startOfDay(start, zone);
  return timelineOf(series, { method: how, zone, place, from, limits: { lower: 10, upper: 30 } });
}

function temperatureAt(arcs: readonly Arc[], instant: number): number {
  const arc = arcs.find(({ from, to }) => from <= instant && instant <= to);
  if (arc === undefined) return Number.NaN;
  return arcTemperature(arc, arc.u0 + ((arc.u1 - arc.u0) * (instant - arc.from)) / (arc.to - arc.from));
}

function seriesOf(start: string, list: readonly { min: number; max: number }[]): DailyTemperatures {
  return dailyTemperatures(
    start,
    list.map((one) => one.min),
    list.map((one) => one.max),
  );
}

/** The formulas of the day sine and of the continuous night, as they stand in print, hours throughout. */
function byFormula(
  hour: number,
  { sunrise, sunset, nextSunrise }: { sunrise: number; sunset: number; nextSunrise: number },
  [min, max, nextMin]: readonly [number, number, number],
): number {
  const [a, b, c] = [1.86, 2.2, -0.17];
  const period = sunset - sunrise + 2 * a;
  const byDay = (t: number): number => min + (max - min) * Math.sin((Math.PI * (t - sunrise - c)) / period);
  if (hour <= sunset) return byDay(hour);
  const night = nextSunrise + c - sunset;
  const left = Math.exp((-b * (hour - sunset)) / night);
  return (nextMin - byDay(sunset) * Math.exp(-b) + (byDay(sunset) - nextMin) * left) / (1 - Math.exp(-b));
}

const EQUAL = Array.from({ length: 3 }, () => ({ min: 10, max: 20 }));

describe("sunrise-exponential", () => {
  // Computed elsewhere for a sunrise at 6, a sunset at 18, 10 to 20 °C and the same coefficients: derived.
  it.each([
    [9, 15.92],
    [12, 19.435],
    [14, 19.981],
    [18, 16.514],
    [21, 13.382],
    [24, 11.589],
  ])("has a formula that gives at hour %d of a day from 6 to 18 the %d °C known for it", (hour, expected) => {
    expect(byFormula(hour, { sunrise: 6, sunset: 18, nextSunrise: 30 }, [10, 20, 10])).toBeCloseTo(
      expected,
      3,
    );
  });

  it("follows the formula at every hour of the sun's own times", () => {
    const place = fc.record({
      latitude: fc.integer({ min: -55, max: 55 }),
      longitude: fc.integer({ min: -40, max: 40 }),
    });
    const hour = fc.integer({ min: 0, max: 2399 }).map((n) => n / 100);
    fc.assert(
      fc.property(
        place,
        fc.integer({ min: 1, max: 364 }),
        hour,
        fc.array(day, { minLength: 4, maxLength: 4 }),
        (at, n, h, list) => {
          const start = addDays("2026-01-01", n - 1);
          const { arcs } = curve("sunrise-exponential", seriesOf(start, list), start, at, "UTC");
          const [today, tomorrow] = [dayNumber(start) + 1, dayNumber(start) + 2].map((one) => sunOn(one, at));
          if (today?.kind !== "rises" || tomorrow?.kind !== "rises")
            throw new Error("the sun rises up to 55°");
          const sun = {
            sunrise: today.sunrise / HOUR,
            sunset: today.sunset / HOUR,
            nextSunrise: tomorrow.sunrise / HOUR,
          };
          const instant = today.sunrise - 0.17 * HOUR + h * HOUR;
          const extremes: [number, number, number] = [
            list[1]?.min ?? 0,
            list[1]?.max ?? 0,
            list[2]?.min ?? 0,
          ];
          // Hours since 1970 have nine digits after the point, and the decay is steep.
          const expected = byFormula(instant / HOUR, sun, extremes);
          fc.pre(instant < (sun.nextSunrise - 0.17) * HOUR);
          expect(temperatureAt(arcs, instant)).toBeCloseTo(expected, 5);
        },
      ),
    );
  });

  it("has the minimum 0.17 h before sunrise and the maximum 1.69 h after the middle of the day", () => {
    const { arcs } = curve("sunrise-exponential", seriesOf("2026-06-20", EQUAL), "2026-06-20");
    const sun = sunOn(dayNumber("2026-06-21"), NEW_YORK);
    if (sun.kind !== "rises") throw new Error("the sun rises in New York");
    expect(temperatureAt(arcs, sun.sunrise - 0.17 * HOUR)).toBeCloseTo(10, 9);
    expect(temperatureAt(arcs, (sun.sunrise + sun.sunset) / 2 + 1.69 * HOUR)).toBeCloseTo(20, 9);
  });
});

describe("sunrise-sine", () => {
  it("has the minimum at sunrise, the maximum two hours after the sun's, and the mean between", () => {
    const { arcs } = curve("sunrise-sine", seriesOf("2026-06-20", EQUAL), "2026-06-20");
    const sun = sunOn(dayNumber("2026-06-21"), NEW_YORK);
    if (sun.kind !== "rises") throw new Error("the sun rises in New York");
    expect(temperatureAt(arcs, sun.sunrise)).toBeCloseTo(10, 12);
    expect(temperatureAt(arcs, sun.noon + 2 * HOUR)).toBeCloseTo(20, 12);
    expect(temperatureAt(arcs, (sun.sunrise + sun.noon + 2 * HOUR) / 2)).toBeCloseTo(15, 12);
  });
});

describe("curves that follow the sun", () => {
  const places = fc.record({
    latitude: fc.integer({ min: -900, max: 900 }).map((n) => n / 10),
    longitude: fc.integer({ min: -450, max: 450 }).map((n) => n / 10),
  });
  const starts = fc.integer({ min: 0, max: 3650 }).map((n) => addDays("2020-01-01", n));
  const days = fc.array(day, { minLength: 2, maxLength: 12 });

  it("run on without a hole, a jump or a NaN at any place on any day, between the extremes around", () => {
    fc.assert(
      fc.property(method, places, starts, days, (how, place, start, list) => {
        const line = curve(how, seriesOf(start, list), start, place, "UTC");
        expect(line.to - line.from).toBe(list.length * DAY_MS);
        line.arcs.forEach((arc, i) => {
          const before = line.arcs[i - 1];
          if (before !== undefined) {
            expect(arc.from).toBe(before.to);
            expect(arcTemperature(arc, arc.u0)).toBeCloseTo(arcTemperature(before, before.u1), 6);
          }
          const index = Math.floor((arc.from - line.from) / DAY_MS);
          const near = list.slice(Math.max(0, index - 1), index + 2);
          for (const u of [arc.u0, arc.u1]) {
            expect(arcTemperature(arc, u)).toBeGreaterThanOrEqual(Math.min(...near.map((d) => d.min)) - 1e-9);
            expect(arcTemperature(arc, u)).toBeLessThanOrEqual(Math.max(...near.map((d) => d.max)) + 1e-9);
          }
        });
      }),
      { numRuns: 300 },
    );
  });

  it("give the degree-days of an independent quadrature of their temperatures", () => {
    fc.assert(
      fc.property(method, places, starts, days, limits, cutoff, (how, place, start, list, span, kind) => {
        const response = linearResponse({ ...span, cutoff: kind });
        const line = curve(how, seriesOf(start, list), start, place, "UTC");
        const { lower, upper } = span;
        const rate = (t: number): number => {
          if (t <= lower || (kind === "vertical" && t > upper)) return 0;
          if (t <= upper || kind === "none") return t - lower;
          return kind === "horizontal" ? upper - lower : Math.max(0, 2 * upper - lower - t);
        };
        let sum = 0;
        for (const arc of line.arcs) {
          const temperature = (v: number): number => arcTemperature(arc, arc.u0 + (arc.u1 - arc.u0) * v);
          const levels = [lower, upper, 2 * upper - lower];
          sum += ((arc.to - arc.from) / DAY_MS) * meanOver((v) => rate(temperature(v)), temperature, levels);
        }
        expect(thermalClock(line, response).total).toBeCloseTo(sum, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("reach each day's extremes where the sun rises", () => {
    const list = [
      { min: 3, max: 15 },
      { min: 7, max: 22 },
      { min: 9, max: 14 },
    ];
    for (const how of SUN_METHODS) {
      const { arcs } = curve(how, seriesOf("2026-06-20", list), "2026-06-20");
      const all = arcs.flatMap((arc) => [arcTemperature(arc, arc.u0), arcTemperature(arc, arc.u1)]);
      for (const value of [3, 15, 7, 22, 9, 14])
        expect(Math.min(...all.map((t) => Math.abs(t - value)))).toBeLessThan(1e-9);
    }
  });

  it("do not need the next day: a missing neighbour is the day's own", () => {
    const holes = dailyTemperatures("2026-06-20", [8, Number.NaN], [20, Number.NaN]);
    const line = curve("sunrise-exponential", holes, "2026-06-20");
    expect([(line.to - line.from) / HOUR, line.endedBy]).toEqual([24, "series-ends"]);
  });

  it("keep to the sun on days when clocks change", () => {
    for (const [start, hours] of [
      ["2026-03-07", 71],
      ["2026-10-31", 73],
    ] as const) {
      const line = curve("sunrise-sine", seriesOf(start, EQUAL), start);
      expect((line.to - line.from) / HOUR).toBe(hours);
      const sun = sunOn(dayNumber(start) + 1, NEW_YORK);
      expect(temperatureAt(line.arcs, sun.noon + 2 * HOUR)).toBeCloseTo(20, 12);
    }
  });

  it("find the day's sun beyond the date line too", () => {
    // Kiritimati keeps a clock a day ahead of its longitude.
    const place = { latitude: 1.9, longitude: -157.4 };
    const line = curve(
      "sunrise-sine",
      seriesOf("2026-06-20", EQUAL),
      "2026-06-20",
      place,
      "Pacific/Kiritimati",
    );
    const warmest = line.arcs.find((arc) => arc.end === 20 && arc.u1 === 1)?.to ?? Number.NaN;
    expect((warmest - line.from) / HOUR).toBeGreaterThan(14);
    expect((warmest - line.from) / HOUR).toBeLessThan(15);
  });

  it("draw half waves in the polar night and under the midnight sun, and say so", () => {
    const place = { latitude: 78, longitude: 15 };
    for (const [start, hour] of [
      ["2026-12-20", 2],
      ["2026-06-20", 2],
    ] as const) {
      const series = seriesOf(start, EQUAL);
      const { arcs, from, to } = curve("sunrise-sine", series, start, place, "Etc/GMT-1");
      const { noon } = sunOn(dayNumber(start) + 1, place);
      expect(temperatureAt(arcs, noon + hour * HOUR)).toBeCloseTo(20, 12);
      const lowest = start.includes("-12-") ? noon - 10 * HOUR : noon - 12 * HOUR;
      expect(temperatureAt(arcs, lowest)).toBeCloseTo(10, 12);
      const notes = sunNotes([series], { method: "sunrise-sine", zone: "Etc/GMT-1", place }, from, to);
      expect(notes.map(({ code }) => code)).toEqual(["common-practice", "no-sunrise"]);
      expect(notes[1]?.message).toContain(`On 3 of 3 days (${start} to ${addDays(start, 2)})`);
    }
  });

  it("have nothing to say of other methods, of constants and of ordinary days but their sources", () => {
    const series = seriesOf("2026-06-20", EQUAL);
    const from = startOfDay("2026-06-20", ZONE);
    const at = { zone: ZONE, place: NEW_YORK };
    const codes = (what: TemperatureSeries, how: SunMethod | "single-sine"): string[] =>
      sunNotes([what], { ...at, method: how }, from, from + 3 * DAY_MS).map(({ code }) => code);
    expect(codes(series, "single-sine")).toEqual([]);
    expect(codes(constantTemperature(20), "sunrise-sine")).toEqual([]);
    expect(codes(series, "sunrise-exponential")).toEqual(["constant-from-memory"]);
  });

  it.each([
    [null, ZONE, "place-needed", "give the place as latitude and longitude"],
    [NEW_YORK, null, "zone-needed", "name the zone"],
    [{ latitude: 91, longitude: 0 }, ZONE, "invalid-option", "place.latitude is 91"],
    [{ latitude: Number.NaN, longitude: 0 }, ZONE, "invalid-number", "place.latitude is NaN"],
    [{ latitude: 40.7, longitude: 74 }, ZONE, "invalid-option", "with east positive"],
  ])("refuse the place %j with the zone %s", (place, zone, code, text) => {
    const series = seriesOf("2026-06-20", EQUAL);
    const refusal = refusalOf(() => curve("sunrise-sine", series, "2026-06-20", place, zone));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it("ask for no place where temperatures are known by the hour", () => {
    expect(curve("sunrise-sine", constantTemperature(20), "2026-06-20", null, null).arcs).toHaveLength(1);
  });
});
