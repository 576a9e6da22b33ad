import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { startOf } from "../../src/forecast/question/forecast-input.ts";
import { beliefOf, byOffset, lastStageBegan } from "../../src/forecast/question/learned.ts";
import { lifePath } from "../../src/forecast/question/life-path.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { drosophilaMelanogaster } from "../../src/species/drosophila-melanogaster.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { refusalParts } from "../support/refusal.ts";

const hang = danausPlexippus.hang?.value ?? Number.NaN;
const darkening = danausPlexippus.darkening?.value ?? Number.NaN;

describe("lifePath", () => {
  it("lays out what is ahead of an egg, with the hang and the darkening as shares of their periods", () => {
    const { period, age, milestones } = lifePath(danausPlexippus, "egg", "unknown");
    expect([period, age]).toEqual([0, { from: 0, to: 1 }]);
    expect(milestones.map(({ kind, id, period: at, share }) => [kind, id, at, share])).toEqual([
      ["stage", "instar-1", 0, 1],
      ["stage", "instar-2", 1, 1],
      ["stage", "instar-3", 2, 1],
      ["stage", "instar-4", 3, 1],
      ["stage", "instar-5", 4, 1],
      ["stage", "prepupa", 5, 1 - hang],
      ["stage", "pupa", 5, 1],
      ["sign", "darkening", 6, 1 - darkening],
      ["stage", "adult", 6, 1],
    ]);
  });

  it("tells the hang from the larva before it, which share a period", () => {
    const ids = ({ milestones }: ReturnType<typeof lifePath>): string[] => milestones.map(({ id }) => id);
    const larva = lifePath(danausPlexippus, "instar-5", { from: 0.5, to: 1 });
    expect([larva.period, larva.age]).toEqual([5, { from: 0.5 * (1 - hang), to: 1 - hang }]);
    expect(ids(larva)).toEqual(["prepupa", "pupa", "darkening", "adult"]);
    const hanging = lifePath(danausPlexippus, "prepupa", 0.5);
    expect(hanging.period).toBe(5);
    expect(hanging.age.from).toBeCloseTo(1 - hang / 2, 12);
    expect(hanging.age.to).toBeCloseTo(1 - hang / 2, 12);
    expect(ids(hanging)).toEqual(["pupa", "darkening", "adult"]);
    expect(lifePath(danausPlexippus, "prepupa", "unknown").age).toEqual({ from: 1 - hang, to: 1 });
    expect(lifePath(danausPlexippus, "prepupa", "new").age).toEqual({ from: 1 - hang, to: 1 - hang });
  });

  it("leaves out a sign that every animal is past, and keeps one that some are not", () => {
    const past = lifePath(danausPlexippus, "pupa", { from: 1 - darkening, to: 1 });
    expect(past.milestones.map(({ id }) => id)).toEqual(["adult"]);
    const some = lifePath(danausPlexippus, "pupa", { from: 1 - darkening - 0.01, to: 1 });
    expect(some.milestones.map(({ id }) => id)).toEqual(["darkening", "adult"]);
  });

  it("knows animals that neither hang nor have instars", () => {
    const { milestones, age } = lifePath({ ...drosophilaMelanogaster, darkening: null }, "larva", "unknown");
    expect(milestones.map(({ id }) => id)).toEqual(["pupa", "adult"]);
    expect(age).toEqual({ from: 0, to: 1 });
  });

  const known = "use one of egg, instar-1, instar-2, instar-3, instar-4, instar-5, prepupa, pupa.";
  it.each([
    ["adult", `found.stage is "adult", but the adult is the end of the forecast; ${known}`],
    [
      "larva",
      `found.stage is "larva", but the constants of Danaus plexippus do not have this stage; ${known}`,
    ],
  ] as const)("refuses to find a monarch as %s", (stage, message) => {
    const parts = refusalParts(() => lifePath(danausPlexippus, stage, "new"));
    expect(parts).toEqual(["unknown-stage", "found.stage", stage, message]);
  });

  it("does not offer the hang of an animal that does not hang", () => {
    const [, , , message] = refusalParts(() => lifePath(drosophilaMelanogaster, "prepupa", "new"));
    expect(message).toContain("use one of egg, larva, pupa.");
  });

  it.each([
    [-0.1, "-0.1"],
    [1.1, "1.1"],
    [Number.NaN, "NaN"],
    [{ from: 0.6, to: 0.5 }, "0.6 to 0.5"],
    [{ from: -0.1, to: 0.5 }, "-0.1 to 0.5"],
    [{ from: 0.1, to: 1.5 }, "0.1 to 1.5"],
    ["old", '"old"'],
  ])("refuses an age of %j", (age, shown) => {
    expect(refusalParts(() => lifePath(danausPlexippus, "egg", age as never))).toEqual([
      "invalid-found",
      "found.age",
      age,
      `found.age is ${shown}; it must be "unknown", "new", or shares of the stage done between 0 and 1.`,
    ]);
  });

  it.each([0, 1, { from: 0, to: 1 }, { from: 0.5, to: 0.5 }])("takes an age of %j", (age) => {
    const { age: found } = lifePath(danausPlexippus, "egg", age);
    expect(found).toEqual(typeof age === "number" ? { from: age, to: age } : age);
  });
});

describe("startOf", () => {
  const input = {
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2026-06-08" },
    temperatures: constantTemperature(25),
  } as const;

  it("counts one animal from noon on the clock on the wall unless told otherwise", () => {
    expect(startOf(input)).toMatchObject({
      zone: null,
      method: "single-sine",
      place: null,
      count: 1,
      instant: Date.parse("2026-06-08T12:00Z"),
      timeAssumed: true,
    });
    expect(startOf({ ...input, found: { ...input.found, on: "2026-06-08T07:30", count: 9 } })).toMatchObject({
      count: 9,
      instant: Date.parse("2026-06-08T07:30Z"),
      timeAssumed: false,
    });
    expect(startOf({ ...input, zone: "America/New_York" }).instant).toBe(Date.parse("2026-06-08T16:00Z"));
  });

  it.each([0, -1, 1.5, 2 ** 53, "3"])("refuses %j animals", (count) => {
    const found = { ...input.found, count: count as number };
    expect(refusalParts(() => startOf({ ...input, found }))).toEqual([
      "invalid-found",
      "found.count",
      count,
      `found.count is ${JSON.stringify(count)}; it must be a whole number from 1.`,
    ]);
  });

  it.each([
    [undefined, "input", "input is undefined; it must be an object with lifeCycle, found and temperatures."],
    [
      { ...input, found: undefined },
      "input",
      "input is an object without found; it must be an object with lifeCycle, found and temperatures.",
    ],
    [{ ...input, found: 7 }, "found", "found is 7; it must be an object with stage and on."],
    [
      { ...input, temperatures: 7 },
      "temperatures",
      "temperatures is 7; it must be a series of temperatures or an ensemble.",
    ],
    [
      { ...input, temperatures: {} },
      "temperatures",
      "temperatures is an object without kind; it must be a series of temperatures or an ensemble.",
    ],
    [
      { ...input, temperatures: { kind: "ensemble", from: "2026-06-08" } },
      "temperatures",
      "temperatures is an object without groups; it must be an ensemble, as weatherEnsemble makes it.",
    ],
    [
      { ...input, temperatures: { kind: "ensemble", groups: [] } },
      "temperatures",
      "temperatures is an object without from; it must be an ensemble, as weatherEnsemble makes it.",
    ],
    [
      { ...input, learned: {} },
      "learned",
      "learned is an object without pace; it must be what learn returned, or left out.",
    ],
    [
      { ...input, learned: { pace: {}, nodes: [], used: [] } },
      "learned",
      "learned is an object without notes; it must be what learn returned, or left out.",
    ],
  ])("names what is missing, case %#", (given, path, message) => {
    const [code, at, , said] = refusalParts(() => startOf(given as never));
    expect([code, at, said]).toEqual(["invalid-option", path, message]);
  });
});

describe("beliefOf", () => {
  it("gives the points of a fine normal distribution", () => {
    const points = Array.from({ length: 2001 }, (_, i) => {
      const z = (i - 1000) / 200;
      return { value: 3 + 2 * z, weight: 7 * Math.exp((-z * z) / 2) };
    });
    const { low, middle, high } = beliefOf(points);
    // The 90 % point of the standard normal distribution, 1.281552: Abramowitz & Stegun (1964), chapter 26 (from memory).
    expect(low).toBeCloseTo(3 - 2 * 1.281552, 4);
    expect(middle).toBeCloseTo(3, 9);
    expect(high).toBeCloseTo(3 + 2 * 1.281552, 4);
  });

  it("runs straight between points, each with half its weight below it, in any order, alike ones together", () => {
    // Shares below the values 1, 2 and 4: 0.125, 0.5 and 0.875 of the weight.
    const points = [
      { value: 4, weight: 1 },
      { value: 2, weight: 1 },
      { value: 1, weight: 1 },
      { value: 2, weight: 1 },
    ];
    expect(beliefOf(points)).toEqual({ low: 1, middle: 2, high: 4 });
    const uneven = beliefOf([
      { value: 0, weight: 0.1 },
      { value: 10, weight: 0.9 },
    ]);
    // 0.05 of the weight lies below 0 and 0.55 below 10.
    expect(uneven.low).toBeCloseTo(1, 12);
    expect(uneven.middle).toBeCloseTo(9, 12);
    expect(uneven.high).toBe(10);
    expect(beliefOf([{ value: 5, weight: 2 }])).toEqual({ low: 5, middle: 5, high: 5 });
    expect(beliefOf([]).middle).toBeNaN();
  });

  it("rises, and lies within the values", () => {
    const point = fc.record({
      value: fc.double({ min: -9, max: 9, noNaN: true }),
      weight: fc.double({ min: 0.01, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1 }), (points) => {
        const { low, middle, high } = beliefOf(points);
        const values = points.map(({ value }) => value);
        expect(low).toBeLessThanOrEqual(middle);
        expect(middle).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(Math.min(...values));
        expect(high).toBeLessThanOrEqual(Math.max(...values));
      }),
    );
  });
});

it("byOffset keeps the points of each offset together, in order", () => {
  const points = [0, 1, 0, 2, 1].map((offset, i) => ({ offset, i }));
  expect(byOffset(points).map((some) => some.map(({ i }) => i))).toEqual([[0, 2], [1, 4], [3]]);
  expect(byOffset([])).toEqual([]);
});

describe("lastStageBegan", () => {
  const learned = (moments: readonly { at: string; weight: number }[] | null) =>
    ({ from: moments && { stage: "pupa", moments } }) as never;

  it("is the moment by which half had begun, in any order", () => {
    const [a, b, c] = ["2026-06-01T06:00:00", "2026-06-02T06:00:00", "2026-06-03T06:00:00"] as const;
    const of = (...weights: readonly [number, number, number]): string | null =>
      lastStageBegan(
        learned([
          { at: c, weight: weights[2] },
          { at: a, weight: weights[0] },
          { at: b, weight: weights[1] },
        ]),
      );
    expect(of(0.2, 0.5, 0.3)).toBe(b);
    expect(of(0.5, 0.2, 0.3)).toBe(a);
    expect(of(0.2, 0.2, 0.6)).toBe(c);
    expect(of(0.1, 0.1, 0.1)).toBe(c);
    expect(lastStageBegan(learned(null))).toBeNull();
  });
});
