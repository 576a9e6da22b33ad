import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Arc, arcAbove, arcExcess, arcTemperature } from "../../src/diurnal/arc.ts";
import { type Method, METHODS } from "../../src/diurnal/method.ts";
import { dayArcs } from "../../src/diurnal/day-arcs.ts";
import { sineAbove, sineExcess } from "../../src/diurnal/sine.ts";
import { triangleAbove, triangleExcess } from "../../src/diurnal/triangle.ts";
import { day, degrees } from "../support/arbitraries.ts";
import { meanOver } from "../support/quadrature.ts";

const DAY = { from: 0, to: 1, origin: "observed" } as const;
const LIMITS = { lower: 10, upper: 30 };
const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
const arc = fc.record({
  shape: fc.constantFrom("line" as const, "wave" as const, "decay" as const),
  start: degrees(-20, 45),
  end: degrees(-20, 45),
});

function whole(parts: { shape: Arc["shape"]; start: number; end: number }): Arc {
  return { ...parts, u0: 0, u1: 1, from: 0, to: 1, origin: "observed" };
}

describe("arcs", () => {
  it("integrate any part of themselves as an independent quadrature does", () => {
    fc.assert(
      fc.property(arc, degrees(-25, 50), share, share, (parts, t, a, b) => {
        const [p, q] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(q > p);
        const one = whole(parts);
        const temperature = (v: number): number => arcTemperature(one, p + (q - p) * v);
        const excess = meanOver((v) => Math.max(temperature(v) - t, 0), temperature, [t]) * (q - p);
        expect(arcExcess(one, t, p, q)).toBeCloseTo(excess, 9);
        const above = meanOver((v) => Number(temperature(v) > t), temperature, [t]) * (q - p);
        expect(arcAbove(one, t, p, q)).toBeCloseTo(above, 9);
      }),
      { numRuns: 300 },
    );
  });

  it("begin and end at their temperatures", () => {
    for (const shape of ["line", "wave", "decay"] as const) {
      const one = whole({ shape, start: 4, end: 20 });
      expect(arcTemperature(one, 0)).toBeCloseTo(4, 12);
      // Half of exp(-2.2 u) is gone at u = 0.5 when what is left is exp(-1.1).
      const half = shape === "decay" ? 4 + (16 * (1 - Math.exp(-1.1))) / (1 - Math.exp(-2.2)) : 12;
      expect(arcTemperature(one, 0.5)).toBeCloseTo(half, 12);
      expect(arcTemperature(one, 1)).toBeCloseTo(20, 12);
    }
  });

  it("are at a temperature where they say that they cross it", () => {
    fc.assert(
      fc.property(arc, degrees(-25, 50), (parts, t) => {
        const one = whole(parts);
        const { start, end } = parts;
        fc.pre(Math.min(start, end) < t && t < Math.max(start, end));
        const above = arcAbove(one, t, 0, 1);
        expect(arcTemperature(one, end > start ? 1 - above : above)).toBeCloseTo(t, 9);
      }),
    );
  });

  it("make up a day whose excess and time above are those of the closed forms", () => {
    const forms: readonly [Method, typeof sineExcess, typeof sineAbove][] = [
      ["single-sine", sineExcess, sineAbove],
      ["single-triangle", triangleExcess, triangleAbove],
    ];
    fc.assert(
      fc.property(
        day,
        degrees(-25, 50),
        fc.constantFrom(...forms),
        ({ min, max, nextMin }, t, [method, excess, above]) => {
          const context = { min, max, nextMin, previousMax: max + 1 };
          const sums = dayArcs(method, context, DAY, LIMITS).map((one) => {
            const length = (one.to - one.from) / (one.u1 - one.u0);
            return {
              excess: length * arcExcess(one, t, one.u0, one.u1),
              above: length * arcAbove(one, t, one.u0, one.u1),
            };
          });
          expect(sums.reduce((sum, one) => sum + one.excess, 0)).toBeCloseTo(excess(t, min, max), 9);
          expect(sums.reduce((sum, one) => sum + one.above, 0)).toBeCloseTo(above(t, min, max), 9);
        },
      ),
    );
  });

  it("cover the day from midnight to midnight, each beginning where the one before ends", () => {
    for (const method of METHODS) {
      const arcs = dayArcs(method, { min: 5, max: 20, previousMax: 22, nextMin: 7 }, DAY, LIMITS);
      expect([arcs[0]?.from, arcs.at(-1)?.to]).toEqual([0, 1]);
      arcs.slice(1).forEach((one, i) => expect(one.from).toBe(arcs[i]?.to));
    }
  });

  it("run on without a jump over midnight in the double methods", () => {
    const first = dayArcs("double-sine", { min: 5, max: 20, previousMax: 22, nextMin: 7 }, DAY, LIMITS);
    const second = dayArcs("double-sine", { min: 7, max: 15, previousMax: 20, nextMin: 3 }, DAY, LIMITS);
    const temperatureAt = (one: Arc | undefined, end: "u0" | "u1"): number =>
      one === undefined ? Number.NaN : arcTemperature(one, one[end]);
    expect(temperatureAt(first.at(-1), "u1")).toBeCloseTo(temperatureAt(second[0], "u0"), 12);
  });
});
