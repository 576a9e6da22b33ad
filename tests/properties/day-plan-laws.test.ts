import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Forecast, Window } from "../../src/forecast/question/result.ts";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import type { PlanCohort } from "../../src/rearing/plan/plan-cohort.ts";
import { wallClock } from "../../src/rearing/plan/stand-ins.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import type { StageId } from "../../src/species/life-cycle.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { formatInstant } from "../../src/time/zone.ts";
import { inventedForecast } from "../support/invented-season.ts";

// A plan takes a few milliseconds, a forecast as many; the runs are few and the cases broad.
const RUNS = { numRuns: Number(process.env["FC_RUNS"] ?? 25) };

const stage = fc.constantFrom<StageId>("egg", "instar-1", "instar-3", "instar-5", "prepupa", "pupa");
const found = fc.record({
  stage,
  on: fc.constantFrom("2026-06-08", "2026-06-12T06:00", "2026-06-19"),
  count: fc.integer({ min: 1, max: 40 }),
  age: fc.constantFrom("unknown" as const, "new" as const, 0.5),
});
const cohort = fc
  .tuple(found, fc.integer({ min: 18, max: 30 }))
  .map(([animals, celsius]): Omit<PlanCohort, "name"> => ({
    lifeCycle: danausPlexippus,
    forecast: inventedForecast({ found: animals, temperatures: constantTemperature(celsius), zone: null }),
  }));
const cohorts = fc
  .array(cohort, { minLength: 1, maxLength: 3 })
  .map((list) => list.map((one, i): PlanCohort => ({ ...one, name: `cohort ${i}` })));

/** A forecast whose windows are so many times as wide. */
function widened(forecast: Forecast, times: number): Forecast {
  const wider = ({ early, expected, late }: Window): Window => {
    const middle = wallClock(expected ?? "");
    const moved = (instant: string | null) =>
      formatInstant(middle + times * (wallClock(instant ?? "") - middle), null);
    return { early: moved(early), expected, late: moved(late) };
  };
  return {
    ...forecast,
    stages: forecast.stages.map((one) => ({ ...one, begins: wider(one.begins) })),
    signs: forecast.signs.map((one) => ({ ...one, begins: wider(one.begins) })),
  };
}

describe("laws of the day plan", () => {
  it("twice the animals eat twice the leaves, on each day and in all", () => {
    fc.assert(
      fc.property(cohorts, (given) => {
        const once = dayPlan(given);
        const twice = dayPlan(given.map((one) => ({ ...one, count: 2 * one.forecast.found.count })));
        once.foliage.forEach((food, i) => {
          const other = twice.foliage[i];
          expect(other?.total).toBeCloseTo(2 * food.total, 8);
          expect(other?.margin).toBeCloseTo(2 * food.margin, 8);
          // More animals may have longer plans, since half an animal comes later.
          for (const day of food.days) {
            const same = other?.days.find((one) => one.day === day.day);
            expect(same?.expected).toBeCloseTo(2 * day.expected, 8);
            expect(same?.most).toBeCloseTo(2 * day.most, 8);
          }
        });
      }),
      RUNS,
    );
  });

  it("nothing is below 0, and nobody is counted twice", () => {
    fc.assert(
      fc.property(cohorts, fc.integer({ min: 0, max: 300 }), (given, leaves) => {
        const eating = given.some(({ forecast }) => !["prepupa", "pupa"].includes(forecast.found.stage));
        const plan = dayPlan(given, eating ? { supplies: [{ leaves }] } : {});
        for (const { tasks, cohorts: stand } of plan.days) {
          for (const { animals, leaves: eaten } of tasks) {
            expect(animals ?? 0).toBeGreaterThanOrEqual(0);
            expect(eaten?.expected ?? 0).toBeGreaterThanOrEqual(0);
          }
          for (const { stages, rest } of stand) {
            for (const { share } of stages) expect(share).toBeGreaterThanOrEqual(0);
            expect(rest.share).toBeGreaterThanOrEqual(0);
            expect(rest.share).toBeLessThanOrEqual(1);
          }
        }
        for (const { days, margin } of plan.foliage) {
          expect(margin).toBeGreaterThanOrEqual(0);
          for (const { expected, most, left } of days) {
            expect(expected).toBeGreaterThanOrEqual(0);
            expect(most).toBeGreaterThanOrEqual(expected);
            expect(left ?? 0).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      RUNS,
    );
  });

  it("a wider window never takes from the margin", () => {
    fc.assert(
      fc.property(cohort, fc.double({ min: 1, max: 3, noNaN: true }), (given, times) => {
        const marginOf = (forecast: Forecast) =>
          dayPlan([{ ...given, name: "A", forecast }]).foliage[0]?.margin ?? 0;
        const narrow = marginOf(given.forecast);
        expect(marginOf(widened(given.forecast, times))).toBeGreaterThanOrEqual(narrow - 1e-6);
      }),
      RUNS,
    );
  });

  it("the order of cohorts does not matter", () => {
    fc.assert(
      fc.property(cohorts, (given) => {
        expect(dayPlan([...given].reverse())).toEqual(dayPlan(given));
      }),
      RUNS,
    );
  });

  it("what is eaten in all does not depend on how warm it is", () => {
    fc.assert(
      fc.property(fc.integer({ min: 16, max: 30 }), (celsius) => {
        const forecast = inventedForecast({ temperatures: constantTemperature(celsius) });
        const [food] = dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast }]).foliage;
        expect(food?.total).toBeCloseTo(84, 1);
      }),
      RUNS,
    );
  });
});
