import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FollowedAnimal, kaplanMeier } from "../../src/cohort/kaplan-meier.ts";
import { fromR } from "../support/reference.ts";
import { refusalOf } from "../support/refusal.ts";

const animal = fc.record({
  time: fc.integer({ min: 0, max: 30 }),
  event: fc.constantFrom<FollowedAnimal["event"]>("died", "lost", "emerged"),
});
const animals = fc.array(animal, { minLength: 1, maxLength: 60 });

describe("kaplanMeier", () => {
  // R's survfit on data of its packages survival and MASS, to the 15 digits that were written.
  describe.each(fromR.curves)("$what", ({ time, died, steps }) => {
    const followed = time.map((at, i): FollowedAnimal => ({
      time: at,
      event: died[i] === 1 ? "died" : "lost",
    }));

    test("steps and standard errors", () => {
      const ours = kaplanMeier(followed);
      expect(ours.map((step) => step.time)).toEqual(steps.time);
      expect(ours.map((step) => step.atRisk)).toEqual(steps.atRisk);
      expect(ours.map((step) => step.died)).toEqual(steps.died);
      ours.forEach((step, i) => {
        expect(step.survival).toBeCloseTo(steps.survival[i] ?? Number.NaN, 12);
        const error = steps.standardError[i] ?? null;
        if (error === null) expect(step.standardError).toBeNull();
        else expect(step.standardError).toBeCloseTo(error, 12);
      });
    });

    test.each([
      ["plain", steps.plainLower, steps.plainUpper],
      ["log-log", steps.loglogLower, steps.loglogUpper],
    ] as const)("%s bounds", (interval, lower, upper) => {
      kaplanMeier(followed, { interval }).forEach((step, i) => {
        // Where none has died R writes 1 and here stands null; where all have, both have none.
        if (step.survival === 1 || step.survival === 0) {
          expect([step.lower, step.upper]).toEqual([null, null]);
          return;
        }
        expect(step.lower).toBeCloseTo(lower[i] ?? Number.NaN, 12);
        expect(step.upper).toBeCloseTo(upper[i] ?? Number.NaN, 12);
      });
    });
  });

  // Freireich et al. 1963, Blood 21:699-716, the 21 patients on 6-MP, a table that textbooks of survival
  // analysis print to three or four digits (from memory).
  test("the printed table of the 6-MP patients", () => {
    const died = [6, 6, 6, 7, 10, 13, 16, 22, 23];
    const lost = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
    const steps = kaplanMeier([
      ...died.map((time): FollowedAnimal => ({ time, event: "died" })),
      ...lost.map((time): FollowedAnimal => ({ time, event: "lost" })),
    ]).filter((step) => step.died > 0);
    expect(steps.map(({ survival }) => survival.toFixed(3))).toEqual([
      "0.857",
      "0.807",
      "0.753",
      "0.690",
      "0.627",
      "0.538",
      "0.448",
    ]);
    expect(steps.map(({ standardError }) => standardError?.toFixed(4))).toEqual([
      "0.0764",
      "0.0869",
      "0.0963",
      "0.1068",
      "0.1141",
      "0.1282",
      "0.1346",
    ]);
  });

  test("never rises, stays inside its bounds, loses no animal, and does not mind the order", () => {
    fc.assert(
      fc.property(animals, fc.constantFrom("plain" as const, "log-log" as const), (followed, interval) => {
        const steps = kaplanMeier(followed, { interval });
        let before = 1;
        for (const { survival, lower, upper } of steps) {
          expect(survival).toBeLessThanOrEqual(before);
          before = survival;
          if (lower === null || upper === null) continue;
          expect(lower).toBeGreaterThanOrEqual(0);
          expect(lower).toBeLessThanOrEqual(survival);
          expect(upper).toBeGreaterThanOrEqual(survival);
          expect(upper).toBeLessThanOrEqual(1);
        }
        const ended = steps.reduce((sum, { died, censored }) => sum + died + censored, 0);
        expect(ended).toBe(followed.length);
        expect(kaplanMeier([...followed].reverse(), { interval })).toEqual(steps);
      }),
    );
  });

  test("without losses it is the share that is left", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 40 }), (times) => {
        for (const { time, survival } of kaplanMeier(times.map((at) => ({ time: at, event: "died" })))) {
          expect(survival).toBeCloseTo(times.filter((other) => other > time).length / times.length, 12);
        }
      }),
    );
  });

  test("days and degree-days differ by a factor and give the same shares", () => {
    fc.assert(
      fc.property(animals, (followed) => {
        const scaled = followed.map((one) => ({ ...one, time: 13.5 * one.time }));
        const shares = kaplanMeier(scaled).map(({ survival, lower, upper }) => [survival, lower, upper]);
        expect(shares).toEqual(
          kaplanMeier(followed).map(({ survival, lower, upper }) => [survival, lower, upper]),
        );
      }),
    );
  });

  test("animals that emerge are watched to the end, and surer bounds are wider", () => {
    const followed: FollowedAnimal[] = [
      { time: 3, event: "died" },
      { time: 9, event: "emerged" },
      { time: 10, event: "emerged" },
    ];
    const [first] = kaplanMeier(followed);
    const [surer] = kaplanMeier(followed, { level: 0.99 });
    expect(first).toMatchObject({ time: 3, atRisk: 3, survival: expect.closeTo(2 / 3, 12) });
    expect(surer?.lower).toBeLessThan(first?.lower ?? 0);
    expect(kaplanMeier(followed).at(-1)?.survival).toBeCloseTo(2 / 3, 12);
  });

  test.each([
    [[], {}, "invalid-option", ["animals"]],
    [[{ time: -1, event: "died" }], {}, "invalid-number", ["animals", 0, "time"]],
    [[{ time: NaN, event: "died" }], {}, "invalid-number", ["animals", 0, "time"]],
    [[{ time: 1, event: "dead" }], {}, "invalid-option", ["animals", 0, "event"]],
    [[{ time: 1, event: "died" }], { interval: "log" }, "invalid-option", ["interval"]],
    [[{ time: 1, event: "died" }], { level: 0 }, "invalid-option", ["level"]],
  ])("refuses %j with %j", (followed, options, code, path) => {
    // @ts-expect-error values that a program without types could pass
    expect(refusalOf(() => kaplanMeier(followed, options))).toMatchObject({ code, path });
  });
});
