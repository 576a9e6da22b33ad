import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { METHODS } from "../../src/diurnal/method.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import type { LifeCycle } from "../../src/species/life-cycle.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { fillGaps } from "../../src/temperature/gaps.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { normalTemperatures, normalsOf } from "../../src/temperature/normals.ts";
import { degrees } from "../support/arbitraries.ts";
import { city } from "../support/city.ts";
import { daysAt, needsOf } from "../support/constant-temperature.ts";
import { published } from "../support/published.ts";
import { refusalOf } from "../support/refusal.ts";

const newYork = city("new-york");

function eggs(change: Partial<ForecastInput> = {}): ForecastInput {
  return {
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2015-06-08" },
    temperatures: newYork,
    zone: "America/New_York",
    ...change,
  };
}

const days = (from: string | null | undefined, to: string | null | undefined): number =>
  (Date.parse(to ?? "") - Date.parse(from ?? "")) / 86_400_000;

const SECOND = 1 / 86_400;

describe("forecast at a constant temperature", () => {
  it("takes K / (T - L) days to each stage, exactly, for the middle animal of known age", () => {
    fc.assert(
      fc.property(fc.constantFrom(...SPECIES), degrees(16, 29), (lifeCycle, temperature) => {
        const first = lifeCycle.stages[0]?.stage ?? "egg";
        const result = forecast({
          lifeCycle,
          found: { stage: first, on: "2026-03-01T00:00", age: "new" },
          temperatures: constantTemperature(temperature),
          zone: "America/New_York",
        });
        for (const { stage, begins } of result.stages.filter((one) => one.stage !== "prepupa")) {
          const before = lifeCycle.stages.slice(
            0,
            lifeCycle.stages.findIndex((one) => one.stage === stage),
          );
          const needs = stage === "adult" ? lifeCycle.stages : before;
          expect(Math.abs(days(result.found.at, begins.expected) - daysAt(needs, temperature))).toBeLessThan(
            SECOND,
          );
        }
      }),
    );
  });

  it.each(published("development-times").rows.filter((row) => row.kind === "days"))(
    "meets $id: $what ($source, $mark; $reason)",
    (row) => {
      const [first = "egg"] = row.stages;
      const lifeCycle = findSpecies(row.species);
      const result = forecast({
        lifeCycle,
        found: { stage: first, on: "2026-06-01", age: "new" },
        temperatures: constantTemperature(row.temperature),
      });
      const last = lifeCycle.stages.findIndex((one) => one.stage === row.stages.at(-1));
      const next = lifeCycle.stages[last + 1]?.stage ?? "adult";
      const found = days(result.found.at, result.stages.find((one) => one.stage === next)?.begins.expected);
      expect(Math.abs(found / row.value - 1)).toBeLessThanOrEqual(row.tolerance + 1e-5);
      expect(found).toBeCloseTo(daysAt(needsOf(lifeCycle, row.stages), row.temperature), 4);
    },
  );

  it("hangs for the last share of the last instar and darkens for the last share of the pupa", () => {
    const { stages, signs } = forecast({
      lifeCycle: danausPlexippus,
      found: { stage: "instar-5", on: "2026-06-01", age: { from: 0, to: 0 } },
      temperatures: constantTemperature(25),
    });
    const begins = (id: string): string => stages.find(({ stage }) => stage === id)?.begins.expected ?? "";
    expect(days(begins("prepupa"), begins("pupa"))).toBeCloseTo((0.15 * 66.6) / 13.5, 1);
    expect(days(signs[0]?.begins.expected, begins("adult"))).toBeCloseTo((0.09 * 120.1) / 13.5, 1);
  });
});

describe("windows", () => {
  it("are those of the lognormal multiplier when the age is known", () => {
    const { stages, found } = forecast({
      lifeCycle: danausPlexippus,
      found: { stage: "pupa", on: "2026-07-01", age: "new" },
      temperatures: constantTemperature(25),
    });
    const sigma = Math.sqrt(Math.log(1 + 0.05 ** 2));
    // z of 10 %, 50 %, 90 % of a standard normal distribution: from memory, standard tables.
    [-1.281551566, 0, 1.281551566].forEach((z, i) => {
      const { early, expected, late } = stages[0]?.begins ?? {};
      const instant = [early, expected, late][i];
      expect(Math.abs(days(found.at, instant) - (120.1 / 13.5) * Math.exp(sigma * z))).toBeLessThan(SECOND);
    });
  });

  it("hold the share of simulated animals that they state, one clock or several", () => {
    // The windows use no random numbers; this check does, with a generator of its own.
    let state = 42;
    const random = (): number => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const animals = 20_000;
    for (const lifeCycle of [danausPlexippus, findSpecies("coccinella-septempunctata")]) {
      const temperature = 24;
      const result = forecast({
        lifeCycle,
        found: { stage: "egg", on: "2026-06-01" },
        temperatures: constantTemperature(temperature),
      });
      const adult = result.stages.at(-1);
      const needs = lifeCycle.stages;
      const correlation = lifeCycle.stageCorrelation.value;
      // Middle need with the egg half done, its variance with equally correlated stages.
      const need = needs.map((one, i) => one.degreeDays.value * (i === 0 ? 0.5 : 1));
      const spread = needs.map((one, i) => (need[i] ?? 0) * one.cv.value);
      const total = need.reduce((sum, one) => sum + one, 0);
      const sumOfSquares = spread.reduce((sum, one) => sum + one * one, 0);
      const squareOfSum = spread.reduce((sum, one) => sum + one, 0) ** 2;
      const cv = Math.sqrt((1 - correlation) * sumOfSquares + correlation * squareOfSum) / total;
      const sigma = Math.sqrt(Math.log(1 + cv * cv));
      const inside = { early: 0, expected: 0, late: 0 };
      for (let k = 0; k < animals; k++) {
        const multiplier = Math.exp(sigma * normal());
        const age = random();
        const time = needs.reduce((sum, one, i) => {
          const share = i === 0 ? 1 - age : 1;
          return sum + (share * one.degreeDays.value * multiplier) / (temperature - one.lower.value);
        }, 0);
        if (time <= days(result.found.at, adult?.begins.early)) inside.early++;
        if (time <= days(result.found.at, adult?.begins.expected)) inside.expected++;
        if (time <= days(result.found.at, adult?.begins.late)) inside.late++;
      }
      // Three standard errors of a share near one half among so many animals are 0.011.
      expect(Math.abs(inside.early / animals - 0.1)).toBeLessThan(0.011);
      expect(Math.abs(inside.expected / animals - 0.5)).toBeLessThan(0.011);
      expect(Math.abs(inside.late / animals - 0.9)).toBeLessThan(0.011);
    }
  });

  it("are the same on one clock and on clocks split by a hair, where the general rule is used", () => {
    const split: LifeCycle = {
      ...danausPlexippus,
      stages: danausPlexippus.stages.map((one, i) => ({
        ...one,
        lower: { ...one.lower, value: one.lower.value + i * 1e-9 },
      })),
    };
    const one = forecast(eggs());
    const several = forecast(eggs({ lifeCycle: split }));
    expect(several.tables.length).toBeGreaterThan(1);
    one.stages.forEach(({ begins }, i) => {
      const other = several.stages[i]?.begins;
      for (const edge of ["early", "expected", "late"] as const) {
        // Five minutes: the general rule sums over multipliers a tenth of a standard deviation apart.
        expect(Math.abs(days(begins[edge], other?.[edge]))).toBeLessThan(5 / 1440);
      }
    });
  });

  it("narrow when the age is known, and begin at the find at the earliest", () => {
    const unknown = forecast(eggs());
    const fresh = forecast(eggs({ found: { stage: "egg", on: "2015-06-08", age: "new" } }));
    const width = ({ stages }: typeof unknown, i: number): number =>
      days(stages[i]?.begins.early, stages[i]?.begins.late);
    expect(width(fresh, 0)).toBeLessThan(width(unknown, 0) / 2);
    expect(days(unknown.found.at, unknown.stages[0]?.begins.early)).toBeGreaterThan(0);
  });

  it("rise with the share and with the stage", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SPECIES),
        fc.integer({ min: 100, max: 200 }),
        fc.constantFrom(...METHODS),
        (lifeCycle, offset, method) => {
          const on = new Date(Date.UTC(2014, 0, 1 + offset)).toISOString().slice(0, 10);
          const first = lifeCycle.stages[0]?.stage ?? "egg";
          const { stages, found } = forecast({
            lifeCycle,
            found: { stage: first, on },
            temperatures: newYork,
            method,
            zone: "America/New_York",
          });
          let before = { early: found.at, expected: found.at, late: found.at };
          for (const { begins } of stages) {
            const { early, expected, late } = begins;
            if (early === null || expected === null || late === null) return;
            expect(Date.parse(early)).toBeLessThan(Date.parse(expected));
            expect(Date.parse(expected)).toBeLessThan(Date.parse(late));
            expect(Date.parse(early)).toBeGreaterThanOrEqual(Date.parse(before.early));
            expect(Date.parse(late)).toBeGreaterThan(Date.parse(before.late));
            before = { early, expected, late };
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("where the animals are found", () => {
  it.each([
    ["instar-3", ["instar-4", "instar-5", "prepupa", "pupa", "adult"], [0, 1]],
    ["instar-5", ["prepupa", "pupa", "adult"], [0, 0.85]],
    ["prepupa", ["pupa", "adult"], [0.85, 1]],
    ["pupa", ["adult"], [0, 1]],
  ] as const)("starts from a found %s", (stage, later, [from, to]) => {
    const result = forecast(eggs({ found: { stage, on: "2015-06-20", count: 3 } }));
    expect(result.stages.map((one) => one.stage)).toEqual(later);
    expect(result.found).toMatchObject({ stage, count: 3, on: "2015-06-20", age: { from, to } });
    expect(result.stages.every(({ begins }) => begins.late !== null)).toBe(true);
  });

  it("does not date a darkening that is already past", () => {
    const { signs } = forecast(eggs({ found: { stage: "pupa", on: "2015-06-20", age: 0.95 } }));
    expect(signs).toEqual([]);
  });

  it("counts from a given time, and from noon where there is none", () => {
    expect(forecast(eggs({ found: { stage: "egg", on: "2015-06-08T17:30" } })).found.at).toBe(
      "2015-06-08T17:30:00-04:00",
    );
    const noon = forecast(eggs());
    expect(noon.found.at).toBe("2015-06-08T12:00:00-04:00");
    expect(noon.notes.map(({ code }) => code)).toContain("time-of-day-assumed");
  });

  it.each([
    [{ stage: "larva" as const, on: "2015-06-08" }, "unknown-stage", "use one of egg, instar-1"],
    [{ stage: "adult" as const, on: "2015-06-08" }, "unknown-stage", "the adult is the end"],
    [
      { stage: "egg" as const, on: "2015-06-31" },
      "invalid-day",
      'found.on is "2015-06-31", which does not exist',
    ],
    [{ stage: "egg" as const, on: "2023-02-29" }, "invalid-day", "28 days"],
    [
      { stage: "egg" as const, on: "2016-06-08" },
      "start-outside-series",
      "run from 2012-01-01 to 2015-12-31",
    ],
    [{ stage: "egg" as const, on: "2015-06-08", count: 0 }, "invalid-found", "whole number from 1"],
    [{ stage: "egg" as const, on: "2015-06-08", count: 1.5 }, "invalid-found", "whole number from 1"],
    [{ stage: "egg" as const, on: "2015-06-08", age: 1.2 }, "invalid-found", "between 0 and 1"],
    [{ stage: "egg" as const, on: "2015-06-08", age: { from: 0.5, to: 0.2 } }, "invalid-found", "0.5 to 0.2"],
    [{ stage: "egg" as const, on: "2015-06-08", age: Number.NaN }, "invalid-found", "NaN"],
  ])("refuses %j", (found, code, text) => {
    const refusal = refusalOf(() => forecast(eggs({ found })));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it.each([
    [{ zone: "Mars/Olympus" }, "invalid-zone"],
    [{ shares: [0.5, 0.5, 0.9] as const }, "invalid-option"],
    [{ shares: [0, 0.5, 1] as const }, "invalid-option"],
  ])("refuses the option %j", (change, code) => {
    expect(refusalOf(() => forecast(eggs(change))).code).toBe(code);
  });
});

describe("what is not known", () => {
  it("is null with the reason where the series ends first", () => {
    const { stages, notes } = forecast(eggs({ found: { stage: "egg", on: "2015-12-20" } }));
    const adult = stages.at(-1);
    expect(adult?.begins).toEqual({ early: null, expected: null, late: null });
    expect(adult?.absence).toMatchObject({ reason: "series-ends" });
    expect(adult?.absence?.message).toContain("2016-01-01");
    expect(notes.map(({ code }) => code)).toContain("series-ends-first");
  });

  it("is null with the reason where a gap comes first", () => {
    const series = dailyTemperatures("2026-06-01", [15, 16, Number.NaN, 17], [25, 26, Number.NaN, 27]);
    const { stages } = forecast(eggs({ temperatures: series, found: { stage: "egg", on: "2026-06-01" } }));
    expect(stages.at(-1)?.absence).toMatchObject({ reason: "gap" });
    expect(stages.at(-1)?.absence?.message).toContain("2026-06-03");
  });

  it("says that nothing develops, with the highest temperature seen", () => {
    const series = dailyTemperatures("2026-01-01", [1, 2, 3], [8, 9.5, 7]);
    const { stages, notes } = forecast(
      eggs({ temperatures: series, found: { stage: "egg", on: "2026-01-01" } }),
    );
    expect(stages.every(({ absence }) => absence?.reason === "too-cold")).toBe(true);
    const note = notes.find(({ code }) => code === "never-develops");
    expect(note?.message).toContain("highest temperature is 9.5 °C and the lower threshold 11.5 °C");
  });

  it("looks as far as it must: the cold before the warmth is waited for", () => {
    const days = 300;
    const warm = (i: number): boolean => i < 5 || i >= 200;
    const cold = Array.from({ length: days }, (_, i) => (warm(i) ? 24 : 4));
    const held = forecast(
      eggs({
        temperatures: dailyTemperatures("2026-01-01", cold, cold),
        found: { stage: "egg", on: "2026-01-01T00:00", age: "new" },
        zone: null,
      }),
    );
    // 352 degree-days at 12.5 a day are 28.16 days, of which five were before the cold.
    expect(held.stages.at(-1)?.begins.expected).toBe("2026-08-12T03:50:24");
    expect(held.stages.every(({ absence }) => absence === null)).toBe(true);
    expect(held.tables[0]?.days.at(-1)?.slice(0, 7)).toBe("2026-08");
  });

  it("may leave only the late date open", () => {
    const { stages, tables } = forecast(
      eggs({
        temperatures: dailyTemperatures("2026-06-01", [20, 20, 20, 20], [20, 20, 20, 20]),
        found: { stage: "egg", on: "2026-06-01" },
      }),
    );
    expect(stages[0]?.begins.early).not.toBeNull();
    expect(stages[0]?.begins.late).toBeNull();
    expect(stages[0]?.absence?.reason).toBe("series-ends");
    // The table goes on to the end of the temperatures where a date is missing.
    expect(tables[0]?.days).toEqual(["2026-06-01", "2026-06-02", "2026-06-03", "2026-06-04"]);
  });
});

describe("notes", () => {
  const codes = (change: Partial<ForecastInput>): string[] =>
    forecast(eggs(change)).notes.map(({ code }) => code);

  it("say which days were filled, are normal or assumed, by date", () => {
    const holey = dailyTemperatures(
      "2015-06-01",
      newYork.min.slice(1247, 1267),
      newYork.max.slice(1247, 1267),
    );
    holey.min[10] = Number.NaN;
    const filled = fillGaps(holey, { fill: "interpolate", upToDays: 2 });
    const normals = normalTemperatures(normalsOf(newYork), "2015-06-01", "2015-12-31");
    const { notes, tables } = forecast(eggs({ temperatures: joinTemperatures(filled, normals) }));
    expect(notes.find(({ code }) => code === "days-filled")?.message).toContain("1 of");
    expect(notes.find(({ code }) => code === "days-filled")?.message).toContain("(2015-06-11)");
    expect(notes.find(({ code }) => code === "temperatures-normal")?.message).toContain("2015-06-21");
    expect(tables[0]?.origin.filter((origin) => origin === "filled")).toHaveLength(1);
    expect(codes({ temperatures: constantTemperature(24) })).toContain("temperatures-assumed");
  });

  it("say when temperatures leave those that the constants were measured at", () => {
    const note = forecast(
      eggs({ lifeCycle: findSpecies("spodoptera-frugiperda"), temperatures: constantTemperature(35) }),
    ).notes;
    expect(note.find(({ code }) => code === "outside-tested-temperatures")?.message).toContain(
      "outside 18 to 30 °C",
    );
    const within = forecast(
      eggs({ lifeCycle: findSpecies("spodoptera-frugiperda"), temperatures: constantTemperature(24) }),
    ).notes;
    expect(within.map(({ code }) => code)).not.toContain("outside-tested-temperatures");
  });

  it("name constants from memory and common practice, and the missing zone", () => {
    const { notes } = forecast(eggs({ zone: null }));
    const text = (code: string): string => notes.find((one) => one.code === code)?.message ?? "";
    expect(text("constant-from-memory")).toContain("lower threshold 11.5 °C; upper threshold 33 °C");
    expect(text("common-practice")).toContain("length of the hang");
    expect(text("local-clock")).toContain("No time zone");
    expect(text("unknown-age")).toContain("0 to 100 %");
  });

  it("mention the missing next minimum only where the end was used", () => {
    expect(codes({ method: "double-sine" })).not.toContain("last-day-without-next-minimum");
    expect(codes({ method: "double-sine", found: { stage: "egg", on: "2015-12-20" } })).toContain(
      "last-day-without-next-minimum",
    );
  });
});

describe("the result", () => {
  it("is plain data, and the same for the same input", () => {
    const result = forecast(eggs());
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
    expect(forecast(eggs())).toEqual(result);
  });

  it("has a degree-day table that adds up, from the find on", () => {
    const { tables } = forecast(eggs());
    const [table] = tables;
    expect(table).toMatchObject({ lower: 11.5, upper: 33, cutoff: "horizontal" });
    expect(table?.days[0]).toBe("2015-06-08");
    let sum = 0;
    table?.degreeDays.forEach((one, i) => {
      sum += one;
      expect(table.total[i]).toBeCloseTo(sum, 9);
    });
  });

  it("does not change when a series is split and joined again", () => {
    const at = 1270;
    const first = dailyTemperatures(newYork.start, newYork.min.slice(0, at), newYork.max.slice(0, at));
    const second = dailyTemperatures("2015-06-24", newYork.min.slice(at), newYork.max.slice(at));
    expect(forecast(eggs({ temperatures: joinTemperatures(first, second) })).stages).toEqual(
      forecast(eggs()).stages,
    );
  });
});
