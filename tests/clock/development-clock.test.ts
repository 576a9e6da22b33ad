import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { developmentClock } from "../../src/clock/development-clock.ts";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { arcTemperature } from "../../src/diurnal/arc.ts";
import { METHODS, type Method } from "../../src/diurnal/method.ts";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { linearRate, linearResponse } from "../../src/response/linear.ts";
import { rateFunction } from "../../src/response/rate-model.ts";
import { RATE_MODELS } from "../../src/response/rate-models.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { cutoff, day, degrees, limits } from "../support/arbitraries.ts";
import { INVENTED_RATES } from "../support/invented-rates.ts";
import { meanOver } from "../support/quadrature.ts";
import { refusalOf } from "../support/refusal.ts";

const START = startOfDay("2026-05-01", null);
const EVERYWHERE = { lower: -Infinity, upper: Infinity };

function timelineFor(
  list: readonly { readonly min: number; readonly max: number }[],
  method: Method = "single-sine",
) {
  const series = dailyTemperatures(
    "2026-05-01",
    list.map(({ min }) => min),
    list.map(({ max }) => max),
  );
  return timelineOf(series, { method, zone: null, from: START, limits: EVERYWHERE });
}

const rates = RATE_MODELS.map((model) => {
  const parameters = INVENTED_RATES[model.id] ?? {};
  return [model.id, rateFunction(model, parameters), parameters] as const;
});
const days = fc.array(day, { minLength: 2, maxLength: 6 });

/** Days that stay where every invented model is smooth: above 13 and below 33 °C. */
const mild = fc.array(
  fc
    .tuple(degrees(13.5, 33), degrees(13.5, 33))
    .map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) })),
  { minLength: 2, maxLength: 6 },
);

/** The whole development along a timeline by the quadrature of the tests. */
function byQuadrature(
  timeline: ReturnType<typeof timelineFor>,
  rate: (t: number) => number,
  kinks: readonly number[],
): number {
  return timeline.arcs.reduce((sum, arc) => {
    const at = (share: number): number => arcTemperature(arc, arc.u0 + (arc.u1 - arc.u0) * share);
    return sum + ((arc.to - arc.from) / DAY_MS) * meanOver((u) => rate(at(u)), at, kinks);
  }, 0);
}

describe.each(rates)("developmentClock of %s", (_, rate, parameters) => {
  it("is the quadrature to 1e-9 where the rate is smooth", () => {
    fc.assert(
      fc.property(mild, (list) => {
        const timeline = timelineFor(list);
        const expected = byQuadrature(timeline, rate, []);
        expect(Math.abs(developmentClock(timeline, rate).total / expected - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it("is the quadrature to 1e-6 across the ends of development", () => {
    const zeros: number[] = [];
    for (let t = -30; t < 60; t += 0.01) if (rate(t) > 0 !== rate(t + 0.01) > 0) zeros.push(t, t + 0.01);
    const kinks = [...zeros, ...["lower", "upper"].flatMap((name) => parameters[name] ?? [])];
    fc.assert(
      fc.property(days, (list) => {
        const timeline = timelineFor(list);
        const expected = byQuadrature(timeline, rate, kinks);
        const { total } = developmentClock(timeline, rate);
        expect(Math.abs(total - expected)).toBeLessThanOrEqual(1e-6 * expected + 1e-12);
      }),
      { numRuns: 20 },
    );
  });

  it("never falls by more than rounding, and its inverse leads back", () => {
    fc.assert(
      fc.property(days, fc.double({ min: 0, max: 1, noNaN: true }), (list, share) => {
        const timeline = timelineFor(list);
        const clock = developmentClock(timeline, rate);
        let before = 0;
        for (let i = 0; i <= 60; i++) {
          const amount = clock.amountAt(timeline.from + ((timeline.to - timeline.from) * i) / 60);
          expect(amount).toBeGreaterThanOrEqual(before - 1e-9);
          before = amount;
        }
        const instant = clock.when(share * clock.total);
        expect(instant).not.toBeNull();
        expect(clock.amountAt(instant ?? 0)).toBeCloseTo(share * clock.total, 9);
      }),
      { numRuns: 15 },
    );
  });
});

describe("developmentClock", () => {
  it("is the thermal clock over the thermal constant where the rate is a line with thresholds", () => {
    const method = fc.constantFrom(...METHODS);
    // A vertical cutoff jumps, which a rule without knowledge of the jump meets to 1e-6 only.
    const bent = cutoff.filter((kind) => kind !== "vertical");
    // Development within a band of a degree or two is no animal's, and can fall between the points.
    const wide = limits.filter(({ lower, upper }) => upper - lower > 5);
    fc.assert(
      fc.property(days, wide, bent, method, (list, { lower, upper }, kind, how) => {
        const response = linearResponse({ lower, upper, cutoff: kind });
        const timeline = timelineFor(list, how);
        const exact = thermalClock(timeline, response);
        const clock = developmentClock(timeline, (t) => linearRate(response, t) / 200);
        for (const share of [0.21, 0.5, 0.83, 1]) {
          const instant = timeline.from + share * (timeline.to - timeline.from);
          expect(clock.amountAt(instant)).toBeCloseTo(exact.amountAt(instant) / 200, 8);
        }
      }),
    );
  });

  it("takes 1 over the rate in days at a constant temperature", () => {
    const timeline = timelineOf(constantTemperature(25), {
      method: "single-sine",
      zone: null,
      from: START,
      limits: EVERYWHERE,
    });
    const clock = developmentClock(timeline, () => 0.08);
    expect(((clock.when(1) ?? 0) - START) / DAY_MS).toBeCloseTo(12.5, 8);
  });

  it("does not reach what is beyond its end", () => {
    const clock = developmentClock(timelineFor([{ min: 15, max: 25 }]), () => 0.05);
    expect(clock.when(clock.total * 1.01)).toBeNull();
    expect(clock.when(0)).toBe(START);
  });

  it("adds up over a timeline that is split", () => {
    const [, rate] = rates[0] ?? ["", () => 0];
    const list = [
      { min: 8, max: 25 },
      { min: 12, max: 39 },
      { min: 16, max: 22 },
    ];
    const whole = developmentClock(timelineFor(list), rate);
    const middle = START + 1.37 * DAY_MS;
    const timeline = timelineFor(list);
    const cut = timelineOf(
      dailyTemperatures(
        "2026-05-01",
        list.map(({ min }) => min),
        list.map(({ max }) => max),
      ),
      { method: "single-sine", zone: null, from: middle, limits: EVERYWHERE },
    );
    expect(whole.amountAt(middle) + developmentClock(cut, rate).total).toBeCloseTo(whole.total, 10);
    expect(timeline.to).toBe(cut.to);
  });

  it.each([
    ["negative", -0.1],
    ["no number", Number.NaN],
    ["endless", Infinity],
  ])("refuses a rate that is %s, naming the temperature", (_, value) => {
    const timeline = timelineOf(constantTemperature(25, { from: "2026-05-01", to: "2026-05-03" }), {
      method: "single-sine",
      zone: null,
      from: START,
      limits: EVERYWHERE,
    });
    const error = refusalOf(() => developmentClock(timeline, () => value));
    expect(error.code).toBe("invalid-number");
    expect(error.message).toBe(
      `the rate at 25 °C is ${value}; it must be 0 or more and finite at every temperature of the curve.`,
    );
  });
});
