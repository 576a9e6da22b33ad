import { describe, expect, it } from "vitest";
import {
  STAND_INS,
  shareInDay,
  standInAt,
  standInsOf,
  stagesOf,
  timeAt,
} from "../../src/rearing/plan/stand-ins.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { dayNumber } from "../../src/time/civil-day.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { inventedForecast } from "../support/invented-season.ts";

const forecast = inventedForecast();
const source = {
  lifeCycle: danausPlexippus,
  forecast,
  stage: "egg",
  start: dayNumber("2026-06-08") * DAY_MS + DAY_MS / 2,
} as const;
const window = { early: "2026-07-01T12:00:00", expected: "2026-07-03T12:00:00", late: "2026-07-07T12:00:00" };
const noon = (day: string): number => (dayNumber(day) + 0.5) * DAY_MS;

describe("timeAt", () => {
  it("gives the forecast's own instants at the forecast's own shares", () => {
    for (const shares of [
      [0.1, 0.5, 0.9],
      [0.25, 0.4, 0.75],
    ] as const) {
      expect(timeAt(window, shares, shares[0])).toBeCloseTo(noon("2026-07-01"), -1);
      expect(timeAt(window, shares, shares[1])).toBeCloseTo(noon("2026-07-03"), -1);
      expect(timeAt(window, shares, shares[2])).toBeCloseTo(noon("2026-07-07"), -1);
    }
  });

  it("runs along a normal curve on either side", () => {
    // Of a normal distribution 2.275 % lie two deviations below the mean and 10 % lie 1.28155 below it.
    const two = timeAt(window, [0.1, 0.5, 0.9], 0.022750131948);
    expect((noon("2026-07-03") - two) / DAY_MS).toBeCloseTo((2 / 1.2815515655) * 2, 6);
    const above = timeAt(window, [0.1, 0.5, 0.9], 1 - 0.022750131948);
    expect((above - noon("2026-07-03")) / DAY_MS).toBeCloseTo((2 / 1.2815515655) * 4, 6);
  });

  it("takes an unknown side to be as wide as the other, and leaves the unknown unknown", () => {
    const open = { ...window, late: null };
    expect(timeAt(open, [0.1, 0.5, 0.9], 0.9)).toBeCloseTo(noon("2026-07-05"), -1);
    const early = { early: window.early, expected: null, late: null };
    expect(timeAt(early, [0.1, 0.5, 0.9], 0.1)).toBe(noon("2026-07-01"));
    expect(timeAt(early, [0.1, 0.5, 0.9], 0.11)).toBe(Infinity);
    expect(timeAt({ early: null, expected: null, late: null }, [0.1, 0.5, 0.9], 0.01)).toBe(Infinity);
  });
});

describe("standInsOf", () => {
  const standIns = standInsOf(source);

  it("gives animals of evenly spaced shares, none of which goes back in its life", () => {
    expect(standIns).toHaveLength(STAND_INS);
    for (const { begins } of standIns) {
      expect(begins).toHaveLength(stagesOf(source).length);
      for (let k = 1; k < begins.length; k++) expect(begins[k]).toBeGreaterThanOrEqual(begins[k - 1] ?? 0);
    }
  });

  it("has as many animals ahead of a forecast's dates as the forecast says", () => {
    forecast.stages.forEach(({ begins }, k) => {
      const at = standInAt(source, 0.1).begins[k + 1] ?? 0;
      expect(begins.early?.slice(0, 10)).toBe(new Date(at).toISOString().slice(0, 10));
      expect(standIns.filter((one) => (one.begins[k + 1] ?? 0) <= at).length).toBe(10);
    });
  });

  it("leaves the earliest the least to eat where the age is unknown", () => {
    const inLast = inventedForecast({ found: { stage: "instar-5", on: "2026-06-20" } });
    const half = standInAt({ ...source, forecast: inLast, stage: "instar-5" }, 0.5).left;
    const first = standInAt({ ...source, forecast: inLast, stage: "instar-5" }, 0.001).left;
    expect(half).toBeCloseTo(0.5, 9);
    expect(first).toBeLessThan(0.01);
    const fresh = inventedForecast({ found: { stage: "instar-5", on: "2026-06-20", age: "new" } });
    expect(standInAt({ ...source, forecast: fresh, stage: "instar-5" }, 0.001).left).toBe(1);
  });
});

describe("shareInDay", () => {
  it("shares a span out over its days, all of it once", () => {
    const [from, to] = [noon("2026-07-01"), noon("2026-07-03")];
    const day = dayNumber("2026-07-01");
    expect([-1, 0, 1, 2, 3].map((i) => shareInDay(from, to, day + i))).toEqual([0, 0.25, 0.5, 0.25, 0]);
  });

  it("puts a span of no length into its day, and one without an end into none", () => {
    const day = dayNumber("2026-07-01");
    expect(shareInDay(noon("2026-07-01"), noon("2026-07-01"), day)).toBe(1);
    expect(shareInDay(noon("2026-07-01"), Infinity, day)).toBe(0);
    expect(shareInDay(Infinity, Infinity, day)).toBe(0);
  });
});
