import { describe, expect, it } from "vitest";
import type { ThermalClock } from "../../src/clock/thermal-clock.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { studentQuantile } from "../../src/numeric/student-t.ts";
import { spreadClocks } from "../../src/forecast/clocks/weather-spread.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";

/** A clock that runs at one rate to day 10 and at another after it. */
function clock(before: number, after: number): ThermalClock {
  const amountAt = (instant: number): number => {
    const day = Math.min(Math.max(instant / DAY_MS, 0), 100);
    return day <= 10 ? before * day : before * 10 + after * (day - 10);
  };
  return {
    from: 0,
    to: 100 * DAY_MS,
    total: amountAt(100 * DAY_MS),
    amountAt,
    when: (amount) =>
      amount <= before * 10 ? (amount / before) * DAY_MS : (10 + (amount - before * 10) / after) * DAY_MS,
  };
}

describe("spreadClocks", () => {
  const members = [clock(10, 8), clock(10, 10), clock(10, 12)];
  const spread = spreadClocks(members, 10 * DAY_MS);

  it("are the members' own clock as far as the weather is known", () => {
    expect(spread).toHaveLength(25);
    for (const one of spread) {
      expect(one.clock.amountAt(4.3 * DAY_MS)).toBe(43);
      expect(one.clock.when(43)).toBeCloseTo(4.3 * DAY_MS, 6);
    }
  });

  it("lie at Student's points of mean and deviation, widened for the few years", () => {
    // Mean 10 and deviation 2 a day: after 30 days of weather 300 and 60.
    const at = (k: number): number => (spread[k]?.clock.amountAt(40 * DAY_MS) ?? Number.NaN) - 100;
    expect(at(12)).toBeCloseTo(300, 9);
    expect(at(22)).toBeCloseTo(300 + studentQuantile(0.9, 2) * 60 * Math.sqrt(4 / 3), 9);
    expect(at(2)).toBeCloseTo(300 - studentQuantile(0.9, 2) * 60 * Math.sqrt(4 / 3), 9);
    expect(spread.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it("never run backwards and invert themselves", () => {
    for (const { clock: one } of spread) {
      let before = 0;
      for (let day = 0; day <= 100; day += 0.7) {
        const amount = one.amountAt(day * DAY_MS);
        expect(amount).toBeGreaterThanOrEqual(before);
        const back = one.when(amount);
        expect(back === null ? Number.NaN : one.amountAt(back)).toBeCloseTo(amount, 6);
        before = amount;
      }
      expect(one.when(one.total + 1)).toBeNull();
    }
  });

  it("leave one or two members as they are", () => {
    expect(spreadClocks(members.slice(0, 2), 0).map(({ weight }) => weight)).toEqual([0.5, 0.5]);
    expect(spreadClocks([], 0)).toEqual([]);
  });
});

describe("a forecast on a weather ensemble", () => {
  const newYork = city("new-york");
  const found = { stage: "egg", on: "2015-06-08" } as const;
  const input = { lifeCycle: danausPlexippus, found, zone: "America/New_York" };
  const days = (from: string | null | undefined, to: string | null | undefined): number =>
    (Date.parse(to ?? "") - Date.parse(from ?? "")) / DAY_MS;
  const adult = (until: string, lifeCycle = danausPlexippus) =>
    forecast({
      ...input,
      lifeCycle,
      temperatures: weatherEnsemble({ observed: newYork, until, past: newYork, exclude: [2015] }),
    }).stages.at(-1)?.begins;

  it("is that of the known temperatures once they reach the last date", () => {
    const known = forecast({ ...input, temperatures: newYork }).stages.at(-1)?.begins;
    const ensemble = adult("2015-07-20");
    for (const edge of ["early", "expected", "late"] as const) {
      expect(Math.abs(days(known?.[edge], ensemble?.[edge]))).toBeLessThan(2 / 86_400);
    }
  });

  it("narrows as the weather becomes known", () => {
    const width = (until: string): number => days(adult(until)?.early, adult(until)?.late);
    // Not with each day: how far three past years lie apart is itself a matter of chance.
    expect(width("2015-07-20")).toBeLessThan(0.9 * width("2015-06-07"));
  });

  it("works for stages with thresholds of their own", () => {
    const window = adult("2015-06-15", findSpecies("coccinella-septempunctata"));
    expect(days(window?.early, window?.expected)).toBeGreaterThan(0);
    expect(days(window?.expected, window?.late)).toBeGreaterThan(0);
  });

  it("says what it rests on, and is plain data", () => {
    const result = forecast({
      ...input,
      temperatures: weatherEnsemble({
        observed: newYork,
        until: "2015-06-15",
        past: newYork,
        exclude: [2015],
      }),
    });
    const text = (code: string): string => result.notes.find((one) => one.code === code)?.message ?? "";
    expect(text("weather-ensemble")).toContain("From 2015-06-16 on the weather is not known");
    expect(text("temperatures-past-years")).toContain("2015-06-16");
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });

  it("does not differ from a certain forecast when all members are the same", () => {
    const observed = joinTemperatures(constantTemperature(22, { to: "2015-06-10" }));
    const hold = (temperature: number) => ({
      ...newYork,
      min: newYork.min.map(() => temperature),
      max: newYork.max.map(() => temperature),
    });
    const same = forecast({
      ...input,
      temperatures: weatherEnsemble({ observed, past: hold(22) }),
    }).stages.at(-1)?.begins;
    const certain = forecast({ ...input, temperatures: constantTemperature(22) }).stages.at(-1)?.begins;
    expect(Math.abs(days(same?.expected, certain?.expected))).toBeLessThan(2 / 86_400);
  });
});
