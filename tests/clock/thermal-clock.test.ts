import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { METHODS, type Method } from "../../src/diurnal/method.ts";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { linearResponse } from "../../src/response/linear.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { cutoff, day, degrees, limits } from "../support/arbitraries.ts";

const START = startOfDay("2026-05-01", null);
const method = fc.constantFrom(...METHODS);
const days = fc.array(day, { minLength: 3, maxLength: 20 });

function clockOf(
  series: TemperatureSeries,
  thresholds: Parameters<typeof linearResponse>[0],
  how: Method = "single-sine",
) {
  const response = linearResponse(thresholds);
  return thermalClock(
    timelineOf(series, { method: how, zone: null, from: START, limits: response }),
    response,
  );
}

function seriesOf(list: readonly { min: number; max: number }[]) {
  return dailyTemperatures(
    "2026-05-01",
    list.map((one) => one.min),
    list.map((one) => one.max),
  );
}

describe("thermalClock", () => {
  it("gives each whole day the degree-days of the closed form (single methods and averages)", () => {
    const single = fc.constantFrom(...METHODS.filter((name) => !name.startsWith("double-")));
    fc.assert(
      fc.property(days, limits, cutoff, single, (list, { lower, upper }, kind, how) => {
        const clock = clockOf(seriesOf(list), { lower, upper, cutoff: kind }, how);
        list.forEach((one, i) => {
          const gained = clock.amountAt(START + (i + 1) * DAY_MS) - clock.amountAt(START + i * DAY_MS);
          expect(gained).toBeCloseTo(degreeDays(one, { lower, upper, cutoff: kind, method: how }), 8);
        });
      }),
    );
  });

  it("gives the double methods' day, from one 03:00 to the next", () => {
    fc.assert(
      fc.property(
        days,
        limits,
        cutoff,
        fc.constantFrom("double-sine" as const, "double-triangle" as const),
        (list, { lower, upper }, kind, how) => {
          const clock = clockOf(seriesOf(list), { lower, upper, cutoff: kind }, how);
          list.slice(0, -1).forEach((one, i) => {
            const from = START + (i + 3 / 24) * DAY_MS;
            const expected = degreeDays(
              { ...one, nextMin: list[i + 1]?.min ?? 0 },
              { lower, upper, cutoff: kind, method: how },
            );
            expect(clock.amountAt(from + DAY_MS) - clock.amountAt(from)).toBeCloseTo(expected, 8);
          });
        },
      ),
    );
  });

  it("is monotone, and its inverse leads back", () => {
    fc.assert(
      fc.property(
        days,
        limits,
        cutoff,
        method,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 6 }),
        (list, { lower, upper }, kind, how, shares) => {
          const clock = clockOf(seriesOf(list), { lower, upper, cutoff: kind }, how);
          const instants = shares
            .map((share) => clock.from + share * (clock.to - clock.from))
            .sort((a, b) => a - b);
          const amounts = instants.map((instant) => clock.amountAt(instant));
          amounts
            .slice(1)
            .forEach((amount, i) => expect(amount).toBeGreaterThanOrEqual((amounts[i] ?? 0) - 1e-12));
          for (const [i, amount] of amounts.entries()) {
            const first = clock.when(amount);
            expect(first).not.toBeNull();
            expect(first ?? Infinity).toBeLessThanOrEqual((instants[i] ?? 0) + 1);
            expect(clock.amountAt(first ?? 0)).toBeCloseTo(amount, 8);
          }
        },
      ),
    );
  });

  it("reaches K at a constant T after exactly K / (T - L) days", () => {
    fc.assert(
      fc.property(degrees(12, 32), degrees(1, 400), (temperature, need) => {
        const clock = clockOf(constantTemperature(temperature), { lower: 11.5, upper: 33 });
        const instant = clock.when(need) ?? Number.NaN;
        expect((instant - START) / DAY_MS).toBeCloseTo(need / (temperature - 11.5), 9);
      }),
    );
  });

  it("integrates readings as the trapezoid rule does where no threshold is crossed", () => {
    fc.assert(
      fc.property(fc.array(degrees(11, 29), { minLength: 2, maxLength: 40 }), (temperatures) => {
        const at = temperatures.map((_, i) => START + i * 1_800_000);
        const clock = clockOf(temperatureReadings(at, temperatures, { clock: "local" }), {
          lower: 10,
          upper: 30,
        });
        const trapezoid =
          temperatures.slice(1).reduce((sum, t, i) => sum + (t + (temperatures[i] ?? 0)) / 2 - 10, 0) / 48;
        expect(clock.total).toBeCloseTo(trapezoid, 9);
      }),
    );
  });

  it("crosses a threshold between two readings exactly", () => {
    // 8 to 12 °C in four hours: above 10 °C for the last two, by 1 °C in the mean.
    const clock = clockOf(temperatureReadings([START, START + DAY_MS / 6], [8, 12], { clock: "local" }), {
      lower: 10,
    });
    expect(clock.total).toBeCloseTo(1 / 12, 12);
    expect(clock.when(1e-9)).toBeGreaterThan(START + DAY_MS / 12);
  });

  it("gives the first instant where the clock stands still, and null beyond the end", () => {
    const clock = clockOf(
      seriesOf([
        { min: 10, max: 20 },
        { min: 0, max: 5 },
        { min: 10, max: 20 },
      ]),
      { lower: 10 },
    );
    const day1 = clock.amountAt(START + DAY_MS);
    expect(clock.when(day1)).toBeLessThanOrEqual(START + DAY_MS);
    expect(clock.when(day1 + 1e-6)).toBeGreaterThan(START + 2 * DAY_MS);
    expect(clock.when(clock.total)).not.toBeNull();
    expect(clock.when(clock.total + 1e-6)).toBeNull();
    expect([clock.when(0), clock.amountAt(START - 5), clock.amountAt(clock.to + 5)]).toEqual([
      START,
      0,
      clock.total,
    ]);
  });
});
