import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { briere1 } from "../../src/response/briere-1.ts";
import { briere2 } from "../../src/response/briere-2.ts";
import { lactin2 } from "../../src/response/lactin-2.ts";
import { logan6 } from "../../src/response/logan-6.ts";
import { optimumOf, rateFunction } from "../../src/response/rate-model.ts";
import { RATE_MODELS } from "../../src/response/rate-models.ts";
import { sharpeSchoolfield, sharpeSchoolfieldHot } from "../../src/response/sharpe-schoolfield.ts";
import { halfLastDigit, published } from "../support/published.ts";
import { INVENTED_RATES } from "../support/invented-rates.ts";
import { refusalOf } from "../support/refusal.ts";

const { sets } = published("rate-models");
const modelOf = (id: string) => {
  const model = RATE_MODELS.find((one) => one.id === id);
  if (model === undefined) throw new Error(`there is no model ${id}`);
  return model;
};

// Derived values guard against change; the formulas are from memory and no printed rates were found.
describe.each(sets)("$id: $what ($mark parameters, derived values)", (set) => {
  const model = modelOf(set.model);

  it("has its rates", () => {
    const rate = rateFunction(model, set.parameters);
    for (const [temperature, printed] of set.derivedRates)
      expect(Math.abs(rate(temperature) - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed));
  });

  it("has its optimum", () => {
    if (set.derivedOptimum === null) return;
    const { temperature, rate } = optimumOf(model, set.parameters);
    expect(Math.abs(temperature - Number(set.derivedOptimum.temperature))).toBeLessThanOrEqual(
      halfLastDigit(set.derivedOptimum.temperature),
    );
    expect(Math.abs(rate - Number(set.derivedOptimum.rate))).toBeLessThanOrEqual(
      halfLastDigit(set.derivedOptimum.rate),
    );
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const limits = fc
  .tuple(number(-5, 15), number(10, 30))
  .map(([lower, span]) => ({ lower, upper: lower + span + 6 }));
const fall = fc
  .tuple(number(0.005, 0.2), number(28, 42), number(0.02, 0.98))
  .map(([rho, upper, share]) => ({ rho, upper, delta: Math.min(15, share / rho) }));
const hot = fc.record({
  rate298: number(0.01, 0.5),
  activation: number(4000, 30000),
  hotHalf: number(300, 312),
  hotEnthalpy: number(40000, 200000),
});

/** Each model with parameters that fit together. */
const curves: readonly (readonly [
  string,
  fc.Arbitrary<{ rate: (t: number) => number; top: { temperature: number; rate: number } }>,
])[] = [
  ["briere-1", fc.tuple(number(1e-5, 1e-3), limits).map(([a, l]) => of(briere1, { a, ...l }))],
  [
    "briere-2",
    fc.tuple(number(1e-5, 1e-3), limits, number(0.5, 12)).map(([a, l, m]) => of(briere2, { a, ...l, m })),
  ],
  ["lactin-2", fc.tuple(fall, number(-0.05, 0)).map(([f, lambda]) => of(lactin2, { ...f, lambda }))],
  ["logan-6", fc.tuple(fall, number(0.005, 0.2)).map(([f, psi]) => of(logan6, { psi, ...f }))],
  ["sharpe-schoolfield-hot", hot.map((h) => of(sharpeSchoolfieldHot, h))],
  [
    "sharpe-schoolfield",
    fc
      .tuple(hot, number(275, 292), number(-150000, -20000))
      .map(([h, coldHalf, coldEnthalpy]) => of(sharpeSchoolfield, { ...h, coldHalf, coldEnthalpy })),
  ],
];

function of<Name extends string>(
  model: Parameters<typeof rateFunction<Name>>[0],
  parameters: Parameters<typeof rateFunction<Name>>[1],
) {
  return { rate: rateFunction(model, parameters), top: optimumOf(model, parameters) };
}

describe.each(curves)("%s", (_, curve) => {
  it("is never negative and always finite, however far out", () => {
    fc.assert(
      fc.property(curve, number(-300, 500), ({ rate }, t) => {
        expect(rate(t)).toBeGreaterThanOrEqual(0);
        expect(rate(t)).toBeLessThan(Infinity);
      }),
    );
  });

  it("is nowhere faster than at its optimum", () => {
    fc.assert(
      fc.property(curve, number(0.0001, 60), ({ rate, top }, away) => {
        expect(rate(top.temperature)).toBe(top.rate);
        expect(rate(top.temperature + away)).toBeLessThanOrEqual(top.rate * (1 + 1e-12));
        expect(rate(top.temperature - away)).toBeLessThanOrEqual(top.rate * (1 + 1e-12));
      }),
    );
  });

  it("rises to its optimum and falls from it", () => {
    fc.assert(
      fc.property(curve, number(0, 30), number(0, 10), ({ rate, top }, away, further) => {
        const crumb = top.rate * 1e-12;
        expect(rate(top.temperature - away - further)).toBeLessThanOrEqual(
          rate(top.temperature - away) + crumb,
        );
        expect(rate(top.temperature + away + further)).toBeLessThanOrEqual(
          rate(top.temperature + away) + crumb,
        );
      }),
    );
  });
});

describe("rate models", () => {
  it("have different ids, explain each parameter, and rise in their number of parameters", () => {
    expect(new Set(RATE_MODELS.map(({ id }) => id)).size).toBe(RATE_MODELS.length);
    for (const { parameters } of RATE_MODELS)
      for (const { name, unit, meaning } of parameters)
        expect([name, unit, meaning].every((text) => text !== "")).toBe(true);
    const counts = RATE_MODELS.map(({ parameters }) => parameters.length);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
  });

  it("are the first of Brière's in the second with m = 2", () => {
    fc.assert(
      fc.property(limits, number(-10, 50), (l, t) => {
        expect(briere2.rate(t, { a: 1e-4, ...l, m: 2 })).toBeCloseTo(briere1.rate(t, { a: 1e-4, ...l }), 12);
      }),
    );
  });

  it("are Logan's in Lactin's when psi is 1 and lambda 0, below the upper limit", () => {
    fc.assert(
      fc.property(fall, number(-10, 42), (f, t) => {
        if (t < f.upper)
          expect(lactin2.rate(t, { ...f, lambda: 0 })).toBeCloseTo(logan6.rate(t, { psi: 1, ...f }), 9);
      }),
    );
  });

  it("absorb Logan's base temperature into psi", () => {
    const f = { rho: 0.12, upper: 37, delta: 4 };
    const base = 10;
    for (const t of [12, 20, 30, 36])
      expect(logan6.rate(t - base, { psi: 0.03, ...f, upper: f.upper - base })).toBeCloseTo(
        logan6.rate(t, { psi: 0.03 * Math.exp(-f.rho * base), ...f }),
        12,
      );
  });

  it("are heat alone in Sharpe and Schoolfield's when cold inactivates far below", () => {
    const h = { rate298: 0.2, activation: 20000, hotHalf: 305, hotEnthalpy: 60000 };
    for (const t of [10, 20, 30, 38])
      expect(sharpeSchoolfield.rate(t, { ...h, coldHalf: 200, coldEnthalpy: -200000 })).toBeCloseTo(
        sharpeSchoolfieldHot.rate(t, h),
        12,
      );
  });

  it("have search coordinates that lead back", () => {
    for (const model of RATE_MODELS) {
      const parameters = INVENTED_RATES[model.id] ?? {};
      const back = model.search?.from(model.search.to(parameters)) ?? parameters;
      for (const [name, value] of Object.entries(parameters))
        expect((back[name] ?? 0) / value).toBeCloseTo(1, 12);
    }
  });

  it("guess starts inside their limits, which fit together", () => {
    const points = [12, 18, 24, 30, 34].map((temperature) => ({ temperature, rate: 0.005 * temperature }));
    for (const model of RATE_MODELS) {
      const { starts } = model.guess(points);
      expect(starts.length).toBeGreaterThan(5);
      expect(starts.map((start) => model.fault(start)).filter((fault) => fault !== null)).toEqual([]);
    }
  });

  it.each([
    [{ a: 1e-4, lower: 20, upper: 20 }, "the lower limit (20) is not below the upper limit (20)"],
    [{ a: 0, lower: 10, upper: 35 }, "a is 0, not above 0"],
    [{ a: 1e-4, lower: -30, upper: -5 }, "the upper limit (-5) is not above 0 °C"],
  ])("refuse %o", (parameters, reason) => {
    const error = refusalOf(() => rateFunction(briere1, parameters));
    expect(error.code).toBe("invalid-parameters");
    expect(error.message).toBe(`the parameters of briere-1 do not fit together: ${reason}.`);
  });

  it("refuse impossible parameters of the others", () => {
    expect(refusalOf(() => optimumOf(briere2, { a: 1e-4, lower: 10, upper: 35, m: 0 })).message).toContain(
      "m is 0",
    );
    expect(
      refusalOf(() => optimumOf(lactin2, { rho: 0.2, upper: 35, delta: 6, lambda: 0 })).message,
    ).toContain("not below 1");
    expect(
      refusalOf(() => optimumOf(lactin2, { rho: 0.1, upper: 35, delta: 6, lambda: 1 })).message,
    ).toContain("lambda is 1");
    expect(refusalOf(() => optimumOf(logan6, { psi: 0, rho: 0.1, upper: 35, delta: 6 })).message).toContain(
      "psi is 0",
    );
    const h = { rate298: 0.2, activation: 20000, hotHalf: 305, hotEnthalpy: 60000 };
    expect(refusalOf(() => optimumOf(sharpeSchoolfieldHot, { ...h, hotHalf: 32 })).message).toContain(
      "in kelvin",
    );
    expect(refusalOf(() => optimumOf(sharpeSchoolfieldHot, { ...h, hotEnthalpy: 20000 })).message).toContain(
      "no optimum",
    );
    expect(
      refusalOf(() => optimumOf(sharpeSchoolfield, { ...h, coldHalf: 310, coldEnthalpy: -1e5 })).message,
    ).toContain("coldHalf");
  });

  it("refuse a parameter that is missing or no number, by name", () => {
    // @ts-expect-error: the upper limit is left out.
    expect(refusalOf(() => rateFunction(briere1, { a: 1e-4, lower: 10 })).message).toContain(
      "parameters.upper is undefined",
    );
    expect(refusalOf(() => rateFunction(briere1, { a: Number.NaN, lower: 10, upper: 35 })).path).toEqual([
      "parameters",
      "a",
    ]);
  });
});
