import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ThermalClock } from "../../src/clock/thermal-clock.ts";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { arrivalsAt } from "../../src/forecast/arrivals/arrival.ts";
import { type Way, shareArrived, sharesAtPaces } from "../../src/forecast/arrivals/done-by.ts";
import { multiplierBy, routeFrom, walk } from "../../src/forecast/arrivals/route.ts";
import { linearResponse } from "../../src/response/linear.ts";
import { dayNumber } from "../../src/time/civil-day.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";

const FROM = dayNumber("2015-06-01") * DAY_MS;

/** A clock of the bundled record above a threshold, from June 2015 on. */
function clockAbove(lower: number): ThermalClock {
  const limits = linearResponse({ lower });
  const options = { method: "single-sine", zone: null, from: FROM, limits } as const;
  return thermalClock(timelineOf(city("new-york"), options), limits);
}

const egg = { clock: clockAbove(11.5), least: 10, most: 40 };
const larva = { clock: clockAbove(13.8), least: 90, most: 90 };
const pupa = { clock: clockAbove(12.9), least: 100, most: 100 };
const one: Pick<Way, "weight" | "paces" | "starts"> = {
  weight: 1,
  paces: [{ pace: 1, weight: 1 }],
  starts: [{ at: FROM, weight: 1 }],
};
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });

describe("arrivalsAt", () => {
  const known = { ...egg, least: 40 };
  const ways: readonly (readonly [string, readonly Way[]])[] = [
    ["one clock", [{ ...one, legs: [egg], sigma: 0.09 }]],
    ["three clocks, ages known", [{ ...one, legs: [known, larva, pupa], sigma: 0.06 }]],
    ["three clocks, ages unknown", [{ ...one, legs: [egg, larva, pupa], sigma: 0.06 }]],
    [
      "two ways, two paces, two starts",
      [0.4, 0.6].map((weight, i) => ({
        weight,
        legs: [i === 0 ? known : { ...known, clock: larva.clock }, pupa],
        sigma: 0.06,
        paces: [
          { pace: 0.95, weight: 0.5 },
          { pace: 1.1, weight: 0.5 },
        ],
        starts: [
          { at: FROM, weight: 0.3 },
          { at: FROM + DAY_MS, weight: 0.7 },
        ],
      })),
    ],
  ];

  it.each(ways)("are when the shares have arrived: %s", (_, some) => {
    fc.assert(
      fc.property(share, (wanted) => {
        const [instant] = arrivalsAt(some, [wanted]);
        const doneBy = (at: number): number =>
          some.reduce((sum, way) => sum + way.weight * shareArrived(way, at), 0);
        // A second on either side: at night a share stands still for hours.
        expect(doneBy((instant ?? Number.NaN) - 1000)).toBeLessThanOrEqual(wanted + 1e-9);
        expect(doneBy((instant ?? Number.NaN) + 1000)).toBeGreaterThanOrEqual(wanted - 1e-9);
      }),
      { numRuns: 30 },
    );
  });

  it("are null beyond the temperatures, and nothing without a way", () => {
    const never = { ...one, legs: [{ ...egg, least: 1e6, most: 1e6 }, larva], sigma: 0.06 };
    expect(arrivalsAt([never], [0.1, 0.5])).toEqual([null, null]);
    expect(arrivalsAt([never, never], [0.5])).toEqual([null]);
    expect(arrivalsAt([], [0.5])).toEqual([null]);
  });

  it("do not depend on the other shares asked for", () => {
    const some = ways[2]?.[1] ?? [];
    expect(arrivalsAt(some, [0.1, 0.5, 0.9])[1]).toBeCloseTo(arrivalsAt(some, [0.5])[0] ?? Number.NaN, -3);
  });
});

describe("sharesAtPaces", () => {
  it("are the shares arrived at each pace", () => {
    for (const legs of [[egg], [{ ...egg, least: 40 }, pupa], [egg, pupa]]) {
      const at = FROM + 9 * DAY_MS;
      const each = [0.9, 1.2].map((pace) =>
        shareArrived({ ...one, legs, sigma: 0.1, paces: [{ pace, weight: 1 }] }, at),
      );
      sharesAtPaces({ ...one, legs, sigma: 0.1 }, [0.9, 1.2], at).forEach((found, i) => {
        expect(found).toBeCloseTo(each[i] ?? Number.NaN, 9);
      });
    }
  });
});

describe("multiplierBy", () => {
  const route = routeFrom(FROM, [{ ...egg, least: 40 }, larva, pupa]);

  it("is the multiplier of the animal that arrives just then", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), share, (multiplier, guess) => {
        const at = walk(route, 40, multiplier) ?? Number.NaN;
        const found = multiplierBy(route, at, { low: 0.1, high: 5 }, 0.5 + guess);
        expect(Math.abs(found - multiplier)).toBeLessThan(1e-8);
      }),
      { numRuns: 100 },
    );
  });

  it("stays within its bounds", () => {
    expect(multiplierBy(route, FROM, { low: 0.5, high: 2 }, 1)).toBe(0.5);
    expect(multiplierBy(route, FROM + 200 * DAY_MS, { low: 0.5, high: 2 }, 1)).toBe(2);
  });
});
