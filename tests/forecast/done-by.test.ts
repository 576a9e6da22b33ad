import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amountAtShare, shareWithin } from "../../src/cohort/requirement.ts";
import { arrivalAt, arrivalsAt } from "../../src/forecast/arrivals/arrival.ts";
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
import { counting, evenClock } from "./even-clock.ts";

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

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

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
    const counter = { asked: 0 };
    const done = meanOverAges(
      routeFrom(START, [{ ...legs[0], clock: counting(ten, counter) } as never, ...legs.slice(1)]),
      sigma,
      1,
    );
    const times = (days: number): number => {
      counter.asked = 0;
      done(START + days * DAY_MS, FINE);
      return counter.asked;
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

describe("arrivals", () => {
  const cases: readonly (readonly [string, Way["legs"], typeof inDays])[] = [
    ["several clocks, ages unknown", legs, inDays],
    ["several clocks, one age", ofOneAge, { least: 7, most: 7 }],
    ["one clock, ages unknown", [{ clock: ten, least: 8, most: 20 }], { least: 0.8, most: 2 }],
    ["one clock, one age", [{ clock: five, least: 15, most: 15 }], { least: 3, most: 3 }],
  ];
  const one: Omit<Way, "legs"> = {
    sigma,
    weight: 1,
    paces: [{ pace: 1, weight: 1 }],
    starts: [{ at: START, weight: 1 }],
  };
  const inDaysOf = (instants: readonly (number | null)[]): number[] =>
    instants.map((at) => ((at ?? Number.NaN) - START) / DAY_MS);

  it.each(cases)("are those of one clock in days: %s", (_, some, needed) => {
    const shares = [0.001, 0.1, 0.5, 0.9, 0.999];
    inDaysOf(arrivalsAt([{ ...one, legs: some }], shares)).forEach((days, i) => {
      const share = shares[i] ?? Number.NaN;
      expect(Math.abs(days - amountAtShare({ ...needed, sigma }, share))).toBeLessThan(0.002);
      expect(arrivalAt([{ ...one, legs: some }], share)).toBe(
        arrivalsAt([{ ...one, legs: some }], [share])[0],
      );
    });
  });

  it.each(cases)(
    "over paces, starts and ways are where the averaged shares reach them: %s",
    (_, some, needed) => {
      const paces = [
        { pace: 0.7, weight: 0.25 },
        { pace: 1.4, weight: 0.75 },
      ];
      const starts = [
        { at: START + 3 * DAY_MS, weight: 0.6 },
        { at: START, weight: 0.4 },
      ];
      const share = (days: number): number =>
        sumOf(
          paces.map(
            ({ pace, weight }) =>
              weight * (0.6 * closed(days - 3, pace, needed) + 0.4 * closed(days, pace, needed)),
          ),
        );
      const ways = [0.3, 0.7].map((weight) => ({ ...one, weight, legs: some, paces, starts }));
      for (const wanted of [0.02, 0.1, 0.5, 0.9, 0.98]) {
        const [both] = inDaysOf(arrivalsAt(ways, [wanted]));
        const [single] = inDaysOf(arrivalsAt([{ ...one, legs: some, paces, starts }], [wanted]));
        for (const days of [both, single])
          expect(Math.abs(share(days ?? Number.NaN) - wanted)).toBeLessThan(2 * BEND);
      }
    },
  );

  it("over paces alone and over starts alone are averaged too", () => {
    const single: Way["legs"] = [{ clock: five, least: 15, most: 15 }];
    const halves = (late: number, slow: number) => (days: number) =>
      0.5 * closed(days - late, slow, { least: 3, most: 3 }) + 0.5 * closed(days, 1, { least: 3, most: 3 });
    const starts = [
      { at: START, weight: 0.5 },
      { at: START + 2 * DAY_MS, weight: 0.5 },
    ];
    const paces = [
      { pace: 1, weight: 0.5 },
      { pace: 1.6, weight: 0.5 },
    ];
    for (const wanted of [0.2, 0.5, 0.8]) {
      const [late] = inDaysOf(arrivalsAt([{ ...one, legs: single, starts }], [wanted]));
      expect(halves(2, 1)(late ?? Number.NaN)).toBeCloseTo(wanted, 4);
      const [slow] = inDaysOf(arrivalsAt([{ ...one, legs: single, paces }], [wanted]));
      expect(halves(0, 1.6)(slow ?? Number.NaN)).toBeCloseTo(wanted, 4);
    }
  });

  it("are none where the clocks end first, for those shares alone", () => {
    const late: Way = { ...one, legs: ofOneAge, starts: [{ at: 93.05 * DAY_MS, weight: 1 }] };
    expect(arrivalsAt([late], [0.4, 0.6]).map((at) => at === null)).toEqual([false, true]);
    const two = [
      { ...late, weight: 0.5 },
      { ...late, weight: 0.5 },
    ];
    expect(arrivalsAt(two, [0.4, 0.6]).map((at) => at === null)).toEqual([false, true]);
    const unknown = { ...late, legs, starts: [{ at: 93.5 * DAY_MS, weight: 1 }] };
    expect(arrivalsAt([unknown], [0.3, 0.9]).map((at) => at === null)).toEqual([false, true]);
  });

  it("of animals that need nothing more are at the start, and of no way nowhere", () => {
    const done: Way = { ...one, legs: [{ clock: ten, least: 0, most: 0 }] };
    expect(arrivalsAt([done], [0.1, 0.9])).toEqual([START, START]);
    expect(arrivalsAt([], [0.1, 0.9])).toEqual([null, null]);
    expect(arrivalAt([], 0.5)).toBeNull();
  });

  it("ask the clocks few times", () => {
    const counter = { asked: 0 };
    const times = (some: Way["legs"], ways: number, change: Partial<Way> = {}): number => {
      const counted = some.map((leg) => ({ ...leg, clock: counting(leg.clock, counter) }));
      const all = Array.from({ length: ways }, () => ({
        ...one,
        ...change,
        weight: 1 / ways,
        legs: counted,
      }));
      counter.asked = 0;
      arrivalsAt(all, [0.1, 0.5, 0.9]);
      return counter.asked;
    };
    const single = [{ clock: five, least: 15, most: 15 }];
    // Known in closed form: what the clock showed at the start is all that is asked.
    expect(times(single, 1)).toBe(1);
    expect(times(ofOneAge, 1)).toBeLessThanOrEqual(10);
    // Several of them: a start, and some three steps to each share.
    expect(times(single, 2) / 2).toBeLessThanOrEqual(12);
    expect(times(ofOneAge, 2) / 2).toBeLessThanOrEqual(125);
    // Ages unknown: a rough look first, so that the fine one, of some hundred points, is asked few times.
    expect(times(legs, 1)).toBeLessThanOrEqual(1700);
  });
});
