import { describe, expect, it } from "vitest";
import { givenBy, mergedLegs, multiplierBy, routeFrom, walk } from "../../src/forecast/arrivals/route.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { counting, evenClock } from "./even-clock.ts";

// Derived by hand: 20 at 10 a day is 2 days, 15 at 5 a day 3 days, 8 at 4 a day 2 days: 7 in all.
const [ten, five, four] = [evenClock(10), evenClock(5), evenClock(4)];
const legs = [
  { clock: ten, least: 12, most: 20 },
  { clock: five, least: 15, most: 15 },
  { clock: four, least: 8, most: 8 },
];
const days = (instant: number | null): number | null => instant && Number((instant / DAY_MS).toFixed(6));

describe("a route of several clocks that began before its start", () => {
  const route = routeFrom(30 * DAY_MS, legs);

  it("walks leg after leg, a multiplier on each", () => {
    expect(days(walk(route, 20, 1))).toBe(37);
    expect(days(walk(route, 12, 1))).toBe(36.2);
    expect(days(walk(route, 20, 1.5))).toBe(40.5);
    // Nothing left of the first leg: the others begin at the start.
    expect(days(walk(route, 0, 1))).toBe(35);
    expect(walk(route, 20, 11)).toBeNull();
    expect(walk(route, 2000, 1)).toBeNull();
  });

  it("says what the first clock gave by the last moment at which the others could begin", () => {
    expect(givenBy(route, 1, 37 * DAY_MS)).toBeCloseTo(20, 6);
    expect(givenBy(route, 1, 36 * DAY_MS)).toBeCloseTo(10, 6);
    expect(givenBy(route, 2, 42 * DAY_MS)).toBeCloseTo(20, 6);
    expect(givenBy(route, 1, 34.9 * DAY_MS)).toBe(-1);
    expect(givenBy(route, 1, 31 * DAY_MS)).toBe(-1);
  });

  it.each([0.5, 0.9, 1, 1.1, 2, 4])("finds the multiplier %d again, from any guess", (multiplier) => {
    const by = walk(route, 20 * 1, multiplier) ?? Number.NaN;
    for (const guess of [0.2, 1, multiplier, 7]) {
      expect(multiplierBy(route, by, { low: 0.1, high: 8 }, guess)).toBeCloseTo(multiplier, 8);
    }
  });

  it("stops at a bound that the multiplier lies beyond", () => {
    const by = walk(route, 20, 3) ?? Number.NaN;
    expect(multiplierBy(route, by, { low: 0.5, high: 2 }, 1)).toBe(2);
    expect(multiplierBy(route, by, { low: 4, high: 8 }, 5)).toBe(4);
    expect(multiplierBy(route, by, { low: 0.5, high: 2 }, 2)).toBe(2);
  });

  it("asks few times for it", () => {
    const counter = { asked: 0 };
    const counted = routeFrom(30 * DAY_MS, [
      { clock: counting(ten, counter), least: 20, most: 20 },
      ...legs.slice(1),
    ]);
    counter.asked = 0;
    multiplierBy(counted, walk(route, 20, 1.2) ?? Number.NaN, { low: 0.1, high: 8 }, 1);
    expect(counter.asked).toBeLessThanOrEqual(8);
  });
});

describe("mergedLegs", () => {
  it("adds up neighbours on one clock, and no others", () => {
    const twice = mergedLegs([
      { clock: ten, least: 1, most: 2 },
      { clock: ten, least: 3, most: 4 },
      { clock: five, least: 5, most: 6 },
      { clock: five, least: 7, most: 8 },
      { clock: five, least: 9, most: 10 },
      { clock: ten, least: 11, most: 12 },
    ]);
    expect(twice.map(({ clock, least, most }) => [clock === ten ? 10 : 5, least, most])).toEqual([
      [10, 4, 6],
      [5, 21, 24],
      [10, 11, 12],
    ]);
    expect(mergedLegs([])).toEqual([]);
    expect(() => routeFrom(0, [])).toThrow("a route has at least one leg");
  });
});
