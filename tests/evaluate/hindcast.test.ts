import { describe, expect, it } from "vitest";
import { type HindcastRun, hindcast } from "../../src/evaluate/hindsight/hindcast.ts";
import { scoreHindcast } from "../../src/evaluate/hindsight/hindcast-scores.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import type { LifeCycle } from "../../src/species/life-cycle.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";

const newYork = city("new-york");

/** Animals that do not differ, so that only the weather is left. */
function alike(lifeCycle: LifeCycle): LifeCycle {
  return { ...lifeCycle, stages: lifeCycle.stages.map((one) => ({ ...one, cv: { ...one.cv, value: 0 } })) };
}

describe("hindcast", () => {
  it.each(["danaus-plexippus", "coccinella-septempunctata"])(
    "says what the forecast says, for %s",
    (species) => {
      const lifeCycle = findSpecies(species);
      const runs = hindcast({ lifeCycle, temperatures: newYork, leads: [0, 7], every: 173 });
      const days = (start: string, at: string | null | undefined): number =>
        (Date.parse(`${at}Z`) - Date.parse(start)) / DAY_MS;
      for (const { start, lead, truth, forecast: times } of runs.filter(
        (run) => run.truth !== null && run.truth < 80,
      )) {
        const found = { stage: "egg", on: `${start}T00:00`, age: "new" } as const;
        const input = { lifeCycle: alike(lifeCycle), found };
        const certain = forecast({ ...input, temperatures: newYork }).stages.at(-1)?.begins.expected;
        expect(Math.abs(days(start, certain) - (truth ?? 0))).toBeLessThan(2 / 86_400);
        const unknown = addDays(start, lead);
        const temperatures = weatherEnsemble({
          observed: newYork,
          until: addDays(unknown, -1),
          past: newYork,
          exclude: [Number(unknown.slice(0, 4))],
          days: 400,
        });
        const { early, expected, late } = forecast({ ...input, temperatures }).stages.at(-1)?.begins ?? {};
        [early, expected, late].forEach((at, k) => {
          // Where the trace is laid anew the curve differs only in how a quarter day is cut.
          expect(Math.abs(days(start, at) - (times[[2, 12, 22][k] ?? 0] ?? Number.NaN))).toBeLessThan(0.02);
        });
      }
      expect(runs).toHaveLength(2 * Math.ceil(newYork.min.length / 173));
    },
  );

  it("leaves no run out: what the record does not hold is counted apart", () => {
    const runs = hindcast({ lifeCycle: danausPlexippus, temperatures: newYork, every: 31 });
    expect(runs).toHaveLength(5 * Math.ceil(newYork.min.length / 31));
    for (const row of scoreHindcast(runs)) {
      expect(row.scored + row.beyondRecord).toBe(row.runs);
      expect(row.runs).toBe(Math.ceil(newYork.min.length / 31));
      expect(row.beyondRecord).toBeGreaterThan(0);
    }
  });

  it("knows the date once all days up to it are known", () => {
    const summer = hindcast({
      lifeCycle: danausPlexippus,
      temperatures: newYork,
      leads: [60],
      every: 61,
    }).filter(({ truth }) => truth !== null && truth < 60);
    expect(summer.length).toBeGreaterThan(3);
    for (const { truth, forecast: times } of summer) {
      // Only the weather of the last day, which the animal did not use up, is open.
      for (const time of times) expect(time).toBeGreaterThanOrEqual(Math.floor(truth ?? 0) - 1e-6);
      expect(Math.abs((times[12] ?? Number.NaN) - (truth ?? 0))).toBeLessThan(2);
    }
  });

  it.each([
    [
      { temperatures: dailyTemperatures("2015-01-01", Array(400).fill(10), Array(400).fill(20)) },
      "no-temperatures",
      "400 days",
    ],
    [{ leads: [1.5] }, "invalid-option", "whole days"],
    [{ every: 0 }, "invalid-option", "every from 1"],
  ])("refuses %#", (change, code, text) => {
    const refusal = refusalOf(() =>
      hindcast({ lifeCycle: danausPlexippus, temperatures: newYork, ...change }),
    );
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });
});

describe("scoreHindcast", () => {
  const run = (
    start: string,
    lead: number,
    truth: number | null,
    times: number[],
    recordEnds = 500,
  ): HindcastRun => {
    return { start, lead, truth, forecast: times, recordEnds };
  };

  it("scores by hand", () => {
    const [row] = scoreHindcast(
      [
        run("2014-06-01", 0, 30, [28, 29, 30, 31, 32]),
        run("2015-06-01", 0, 36, [28, 29, 30, 31, 32]),
        run("2015-12-01", 0, null, [100, 100, 100, 100, 100], 31),
        run("2015-12-02", 0, null, [10, 10, 10, 10, 10], 30),
      ],
      [6, 12],
    );
    expect(row).toMatchObject({ runs: 4, scored: 2, beyondRecord: 2, closedTooEarly: 1 });
    // Observed less expected: 0 and 6.
    expect([row?.biasDays, row?.meanAbsoluteErrorDays, row?.coverage]).toEqual([3, 3, 0.5]);
    // Usual days: the other year's 36 and 30, six days off each.
    expect(row?.skillOnUsualDays).toBe(0.5);
    expect(row?.skillOnClimatology).toBe(0);
    // CRPS of the ensemble at 30: mean distance 1.2, half the mean distance between members 0.8; at 36: 6 - 0.8.
    expect(row?.crpsDays).toBeCloseTo((0.4 + 5.2) / 2, 9);
  });
});
