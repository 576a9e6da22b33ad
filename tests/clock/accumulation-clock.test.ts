import { describe, expect, it } from "vitest";
import { type Accumulation, accumulationClock } from "../../src/clock/accumulation-clock.ts";
import { type Arc, DrawnArc } from "../../src/diurnal/arc.ts";
import type { Timeline } from "../../src/diurnal/timeline.ts";
import { DAY_MS } from "../../src/time/zone.ts";

const HOUR = DAY_MS / 24;

/** An arc of a line, from one temperature at u0 to another at u1. */
function line(from: number, to: number, at: readonly [number, number], part: readonly [number, number]): Arc {
  const [u0, u1] = part;
  const slope = (at[1] - at[0]) / (u1 - u0);
  const start = at[0] - slope * u0;
  return new DrawnArc({ shape: "line", start, end: start + slope, u0, u1, from, to, origin: "observed" });
}

function timeline(...arcs: readonly Arc[]): Timeline {
  const [from, to] = [arcs[0]?.from ?? 0, arcs.at(-1)?.to ?? 0];
  return { arcs, from, to, endedBy: "end" } as unknown as Timeline;
}

/** The temperature itself as a rate, 0 below 0: integrals by hand. */
const warmth: Accumulation = {
  rate: (temperature) => Math.max(0, temperature),
  over: ({ start, end }, p, q) => {
    const [at, slope] = [start, end - start];
    if (slope === 0) return Math.max(0, at) * (q - p);
    const zero = -at / slope;
    const [a, b] =
      slope > 0 ? [Math.max(p, zero), Math.max(q, zero)] : [Math.min(p, zero), Math.min(q, zero)];
    return at * (b - a) + (slope * (b ** 2 - a ** 2)) / 2;
  },
};

/** The same, and how often its rate was asked for. */
function counted(): { readonly accumulation: Accumulation; asked: () => number } {
  let asked = 0;
  const rate = (temperature: number): number => {
    asked++;
    return warmth.rate(temperature);
  };
  return { accumulation: { ...warmth, rate }, asked: () => asked };
}

describe("accumulationClock", () => {
  // Derived by hand: a day from 0 to 24 degrees is 12, the half day after it at 24 is 12 again.
  const day = line(0, DAY_MS, [0, 24], [0, 1]);
  const half = line(DAY_MS, 1.5 * DAY_MS, [24, 24], [0, 1]);

  it("adds up arcs, and answers moments before and after them by their ends", () => {
    const clock = accumulationClock(timeline(day, half), warmth);
    expect([clock.from, clock.to, clock.total]).toEqual([0, 1.5 * DAY_MS, 24]);
    expect(
      [-HOUR, 0, 12 * HOUR, DAY_MS, DAY_MS + HOUR, 1.5 * DAY_MS, 2 * DAY_MS].map((at) => clock.amountAt(at)),
    ).toEqual([0, 0, 3, 12, 13, 24, 24]);
  });

  it("leads from an amount to its first moment", () => {
    const clock = accumulationClock(timeline(day, half), warmth);
    expect([clock.when(-1), clock.when(0), clock.when(24.001)]).toEqual([0, 0, null]);
    expect(clock.when(3)).toBeCloseTo(12 * HOUR, 0);
    expect(clock.when(12)).toBeCloseTo(DAY_MS, 0);
    expect(clock.when(13)).toBeCloseTo(DAY_MS + HOUR, 0);
    expect(clock.when(24)).toBeCloseTo(1.5 * DAY_MS, 0);
  });

  it("knows that an arc may be a part of a longer one", () => {
    // Degrees 6 to 18 over half a day: 6, of which the first quarter day, 6 to 12 degrees, is 2.25.
    const part = line(0, 12 * HOUR, [6, 18], [0.25, 0.75]);
    const clock = accumulationClock(timeline(part), warmth);
    expect(clock.total).toBeCloseTo(6, 12);
    expect(clock.amountAt(6 * HOUR)).toBeCloseTo(2.25, 12);
    expect(clock.when(2.25)).toBeCloseTo(6 * HOUR, 0);
    expect(clock.when(6)).toBeCloseTo(12 * HOUR, 0);
  });

  it("stands still without development, and answers the moment at which it stopped", () => {
    const cold = line(0, DAY_MS, [-5, -5], [0, 1]);
    const clock = accumulationClock(
      timeline(
        day,
        { ...cold, from: DAY_MS, to: 2 * DAY_MS },
        { ...half, from: 2 * DAY_MS, to: 2.5 * DAY_MS },
      ),
      warmth,
    );
    expect(clock.amountAt(1.5 * DAY_MS)).toBe(12);
    expect(clock.when(12)).toBeCloseTo(DAY_MS, 0);
    expect(clock.when(12 + 1e-9)).toBeGreaterThan(2 * DAY_MS - 1);
    expect(accumulationClock(timeline(cold), warmth).when(1e-9)).toBeNull();
  });

  it("holds nothing where there are no arcs", () => {
    const clock = accumulationClock(timeline(), warmth);
    expect([clock.total, clock.amountAt(5), clock.when(0), clock.when(1)]).toEqual([0, 0, 0, null]);
  });

  it("needs few steps for a moment: those of Newton, from the chord on", () => {
    const count = (amount: number, ...arcs: readonly Arc[]): number => {
      const { accumulation, asked } = counted();
      accumulationClock(timeline(...arcs), accumulation).when(amount);
      return asked();
    };
    // On an even rate the chord is the answer.
    expect(count(5, line(0, DAY_MS, [10, 10], [0.5, 1]))).toBeLessThanOrEqual(2);
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9]) {
      expect(count(12 * share, day)).toBeLessThanOrEqual(8);
      expect(count(6 * share, line(0, 12 * HOUR, [6, 18], [0.25, 0.75]))).toBeLessThanOrEqual(8);
      // An arc that begins in the cold: the slope is 0 on half of it.
      expect(count(3 * share, line(0, DAY_MS, [-12, 12], [0, 1]))).toBeLessThanOrEqual(8);
    }
  });
});
