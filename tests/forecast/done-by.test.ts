import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shareWithin } from "../../src/cohort/requirement.ts";
import { COARSE, FINE, meanOverAges } from "../../src/forecast/arrivals/age-mean.ts";
import {
  type Way,
  doneByAll,
  middlePace,
  shareArrived,
  sharesAtPaces,
} from "../../src/forecast/arrivals/done-by.ts";
import { routeFrom } from "../../src/forecast/arrivals/route.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { evenClock } from "./even-clock.ts";

// On clocks that run evenly a leg of so many degree-days is a leg of so many days, whichever clock it is on: what is
// reckoned by walking over several clocks must be what the closed form gives for one, in days.
const [ten, five, four] = [evenClock(10), evenClock(5), evenClock(4)];
const legs = [
  { clock: ten, least: 8, most: 20 },
  { clock: five, least: 15, most: 15 },
  { clock: four, least: 8, most: 8 },
];
const inDays = { least: 0.8 + 3 + 2, most: 2 + 3 + 2 };
const ofOneAge = [{ clock: ten, least: 20, most: 20 }, ...legs.slice(1)];
const START = 20 * DAY_MS;
const sigma = 0.08;

/** What the rule of points loses where the share bends sharply, at the ends of the range of ages: 40 s here. */
const BEND = 3e-4;

/** Share done in so many days by the closed form, at a pace. */
const closed = (days: number, pace = 1, needed = inDays): number =>
  shareWithin({ ...needed, sigma }, Math.max(0, days) / pace);

describe("the mean over ages", () => {
  it.each([1, 0.8, 1.3])(
    "is that of one clock in days, at a pace of %d, whatever was asked before",
    (pace) => {
      const done = meanOverAges(routeFrom(START, legs), sigma, pace);
      fc.assert(
        fc.property(fc.double({ min: 0, max: 15, noNaN: true }), (days) => {
          expect(Math.abs(done(START + days * DAY_MS, FINE) - closed(days, pace))).toBeLessThan(BEND);
          expect(Math.abs(done(START + days * DAY_MS, COARSE) - closed(days, pace))).toBeLessThan(0.02);
        }),
      );
      for (const days of [1, 14, 5, 7, 6.9, 6, 14, 1]) {
        expect(Math.abs(done(START + days * DAY_MS, FINE) - closed(days, pace))).toBeLessThan(BEND);
      }
    },
  );

  it("is sharp where all animals need the same", () => {
    const done = meanOverAges(routeFrom(START, legs), 0, 1);
    for (const days of [5.7, 5.8, 6.1, 6.4, 7, 7.1]) {
      const expected = Math.min(1, Math.max(0, (days - 5.8) / 1.2));
      expect(done(START + days * DAY_MS, FINE)).toBeCloseTo(expected, 6);
    }
  });

  it("asks for few multipliers, and for fewer near the last instant", () => {
    let asked = 0;
    const counting = {
      ...ten,
      amountAt: (instant: number) => {
        asked++;
        return ten.amountAt(instant);
      },
    };
    const done = meanOverAges(
      routeFrom(START, [{ ...legs[0], clock: counting } as never, ...legs.slice(1)]),
      sigma,
      1,
    );
    const times = (days: number): number => {
      asked = 0;
      done(START + days * DAY_MS, FINE);
      return asked;
    };
    // The density has 121 points. An age of 1.2 days in 6 spans some 24 of them, and the tail is left out.
    expect(times(6.4)).toBeLessThanOrEqual(40);
    expect(times(6.41)).toBeLessThanOrEqual(34);
    expect(times(4)).toBeLessThanOrEqual(20);
    expect(times(12)).toBeLessThanOrEqual(20);
    expect(times(12.1)).toBeLessThanOrEqual(4);
  });
});

describe("shares at paces", () => {
  const starts = [
    { at: START, weight: 0.25 },
    { at: START + 2 * DAY_MS, weight: 0.75 },
  ];
  const paces = [0.5, 1, 2.2];
  const cases: readonly (readonly [string, Way["legs"], typeof inDays])[] = [
    ["several clocks, ages unknown", legs, inDays],
    ["several clocks, one age", ofOneAge, { least: 7, most: 7 }],
    ["one clock, ages unknown", [{ clock: ten, least: 8, most: 20 }], { least: 0.8, most: 2 }],
    ["one clock, one age", [{ clock: five, least: 15, most: 15 }], { least: 3, most: 3 }],
  ];

  it.each(cases)("are the closed form at each pace, over all starts: %s", (_, some, needed) => {
    for (const days of [0, 1, 2.6, 3.4, 5, 7.1, 8, 12, 17]) {
      const shares = sharesAtPaces({ legs: some, sigma, starts }, paces, START + days * DAY_MS);
      paces.forEach((pace, i) => {
        const expected = 0.25 * closed(days, pace, needed) + 0.75 * closed(days - 2, pace, needed);
        expect(Math.abs((shares[i] ?? Number.NaN) - expected)).toBeLessThan(BEND);
      });
    }
  });

  it.each(cases)("and over all that is believed of the pace: %s", (_, some, needed) => {
    const believed = [
      { pace: 0.5, weight: 0.2 },
      { pace: 1, weight: 0.3 },
      { pace: 2.2, weight: 0.5 },
    ];
    for (const days of [0, 1, 2.6, 3.4, 5, 7.1, 8, 12, 17]) {
      const expected = believed.reduce((sum, { pace, weight }) => {
        return sum + weight * (0.25 * closed(days, pace, needed) + 0.75 * closed(days - 2, pace, needed));
      }, 0);
      const way = { legs: some, sigma, starts, paces: believed };
      expect(Math.abs(shareArrived({ ...way, weight: 0.5 }, START + days * DAY_MS) - expected)).toBeLessThan(
        BEND,
      );
      const halves = [0.4, 0.6].map((weight) => ({ ...way, weight }));
      expect(Math.abs(doneByAll(halves)(START + days * DAY_MS, FINE) - expected)).toBeLessThan(BEND);
    }
    expect(middlePace(believed)).toBeCloseTo(0.1 + 0.3 + 1.1, 12);
  });

  it("nothing is done on no way, and by no animal without a leg", () => {
    expect(doneByAll([])(START, FINE)).toBe(0);
    expect(
      doneByAll([{ legs: [], sigma, weight: 1, paces: [{ pace: 1, weight: 1 }], starts }])(START, FINE),
    ).toBe(0);
  });
});
