import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { absenceOf, highestOf } from "../../src/forecast/clocks/absence.ts";
import { degreeDayTables } from "../../src/forecast/clocks/degree-day-table.ts";
import { clocksOn, curveOf, distinct, stageClocks } from "../../src/forecast/clocks/stage-clock.ts";
import { lifePath } from "../../src/forecast/question/life-path.ts";
import { cydiaPomonella } from "../../src/species/cydia-pomonella.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { inventedDays } from "../support/invented-season.ts";

const ZONE = "America/New_York";
const options = (from: number, method = "single-sine" as const) => ({
  method,
  place: null,
  zone: ZONE,
  from,
});
const clocks = (series: TemperatureSeries, from: number, lifeCycle = danausPlexippus) =>
  stageClocks(lifeCycle, lifePath(lifeCycle, "egg", "new"), series, options(from));
const at = (day: string): number => startOfDay(day, ZONE);

describe("degreeDayTables", () => {
  const days = inventedDays("2026-05-01", 60);

  it("give the degree-days of each civil day, the last being the one in which an instant falls", () => {
    const { tables, ends } = degreeDayTables(
      [{ weight: 1, clocks: clocks(days, at("2026-05-03")) }],
      at("2026-05-20") + 1,
      ZONE,
    );
    expect(tables).toHaveLength(1);
    const [table] = tables;
    expect(table).toMatchObject({ lower: 11.5, upper: 33, cutoff: "horizontal" });
    expect(table?.stages).toEqual(danausPlexippus.stages.map(({ stage }) => stage));
    expect([table?.days[0], table?.days.at(-1), table?.days.length]).toEqual([
      "2026-05-03",
      "2026-05-20",
      18,
    ]);
    expect(ends).toEqual(table?.days.map((day) => at(day) + DAY_MS));
    // The printed convention cuts days at their minimum; over eighteen days the two agree to some per cent.
    const printed = accumulateDegreeDays(days, {
      lower: 11.5,
      upper: 33,
      from: "2026-05-03",
      to: "2026-05-20",
    });
    expect((table?.total.at(-1) ?? 0) / (printed.at(-1)?.total ?? 1)).toBeCloseTo(1, 1);
    table?.total.forEach((total, i) => {
      expect(total - (table.total[i - 1] ?? 0)).toBeCloseTo(table.degreeDays[i] ?? Number.NaN, 9);
    });
  });

  it("end with the temperatures, and with an instant at midnight without another day", () => {
    const ending = (until: number): string | undefined =>
      degreeDayTables(
        [{ weight: 1, clocks: clocks(days, at("2026-05-03")) }],
        until,
        ZONE,
      ).tables[0]?.days.at(-1);
    expect(ending(at("2026-05-20"))).toBe("2026-05-19");
    expect(ending(at("2027-05-20"))).toBe("2026-06-29");
  });

  it("are no longer than 800 days", () => {
    const held = clocks(constantTemperature(20), at("2026-05-03"));
    const { tables } = degreeDayTables([{ weight: 1, clocks: held }], at("2036-01-01"), ZONE);
    expect(tables[0]?.days).toHaveLength(800);
    // 8.5 degrees above the threshold, but for the days on which clocks change.
    expect(tables[0]?.degreeDays[5]).toBeCloseTo(8.5, 9);
  });

  it("are the mean of the ways that the weather may go, by their weights", () => {
    const warm = (temperature: number) => clocks(constantTemperature(temperature), at("2026-05-03"));
    const { tables } = degreeDayTables(
      [
        { weight: 0.25, clocks: warm(15.5) },
        { weight: 0.75, clocks: warm(19.5) },
      ],
      at("2026-05-09"),
      ZONE,
    );
    for (const heat of tables[0]?.degreeDays ?? []) expect(heat).toBeCloseTo(0.25 * 4 + 0.75 * 8, 9);
    expect(tables[0]?.degreeDays).toHaveLength(6);
  });

  it("are one for each pair of thresholds, with the stages that run on it", () => {
    const { tables } = degreeDayTables(
      [{ weight: 1, clocks: clocks(days, at("2026-05-03"), cydiaPomonella) }],
      at("2026-05-20"),
      ZONE,
    );
    const pairs = new Set(cydiaPomonella.stages.map(({ lower, upper }) => `${lower.value} ${upper?.value}`));
    expect(tables).toHaveLength(pairs.size);
    expect(tables.flatMap(({ stages }) => stages)).toEqual(cydiaPomonella.stages.map(({ stage }) => stage));
    tables.forEach((table) => {
      const needs = cydiaPomonella.stages.find(({ stage }) => stage === table.stages[0]);
      expect(table).toMatchObject({ lower: needs?.lower.value, upper: needs?.upper?.value ?? null });
    });
    expect(degreeDayTables([], at("2026-05-20"), ZONE)).toEqual({ tables: [], ends: [] });
  });

  it("name the least certain origin of each day", () => {
    const joined = joinTemperatures(
      inventedDays("2026-05-01", 5),
      constantTemperature(20, { from: "2026-05-06", to: "2026-05-10" }),
    );
    const { tables } = degreeDayTables(
      [{ weight: 1, clocks: clocks(joined, at("2026-05-03")) }],
      at("2026-05-09"),
      ZONE,
    );
    expect(tables[0]?.origin.slice(0, 2)).toEqual(["observed", "observed"]);
    expect(tables[0]?.origin.slice(3)).toEqual(["assumed", "assumed", "assumed"]);
    // Each day its own, also where it is less certain than the next.
    const origins = [
      "observed",
      "observed",
      "observed",
      "filled",
      "past-year",
      "filled",
      "observed",
      "observed",
    ] as const;
    const mixed = dailyTemperatures("2026-05-01", Array(8).fill(8), Array(8).fill(24), origins);
    const rows = degreeDayTables(
      [{ weight: 1, clocks: clocks(mixed, at("2026-05-01")) }],
      at("2026-05-09"),
      ZONE,
    );
    expect(rows.tables[0]?.origin).toEqual(origins);
  });
});

describe("clocks of the stages", () => {
  const from = at("2026-05-03");
  const path = lifePath(danausPlexippus, "egg", "new");

  it("are none before the find, and one where thresholds are the same", () => {
    const found = lifePath(danausPlexippus, "instar-3", "new");
    const some = stageClocks(danausPlexippus, found, constantTemperature(20), options(from));
    expect(some.map((one) => one === null)).toEqual([true, true, true, false, false, false, false]);
    expect(distinct(some)).toHaveLength(1);
    expect(distinct(some)[0]?.stages).toEqual(["instar-3", "instar-4", "instar-5", "pupa"]);
  });

  it.each([
    ["lower", { lower: { value: 12, mark: "read", source: "invented" } }],
    ["upper", { upper: { value: 30, mark: "read", source: "invented" } }],
    ["no upper", { upper: null, cutoff: "none" }],
    ["cutoff", { cutoff: "vertical" }],
  ] as const)("are two where the last stage has another %s threshold", (_, change) => {
    const stages = danausPlexippus.stages.map((one) => (one.stage === "pupa" ? { ...one, ...change } : one));
    const some = clocks(constantTemperature(20), from, { ...danausPlexippus, stages });
    expect(distinct(some).map((one) => one.stages.length)).toEqual([6, 1]);
  });

  it("run faster for animals that are warmer, as their temperatures would make them run", () => {
    const curve = curveOf(constantTemperature(20), options(from));
    const [warmer] = clocksOn(curve, danausPlexippus, path, 3);
    const [held] = clocks(constantTemperature(23), from);
    const day = from + 10 * DAY_MS;
    expect(warmer?.clock.amountAt(day)).toBeCloseTo(held?.clock.amountAt(day) ?? Number.NaN, 9);
    expect(warmer?.response.lower).toBe(11.5);
    expect([warmer?.offset, warmer && highestOf(warmer)]).toEqual([3, 23]);
    // The upper threshold moves along: 33 °C is felt where the thermometer says 30.
    const hot = clocksOn(curveOf(constantTemperature(35), options(from)), danausPlexippus, path, 3)[0];
    expect(hot?.clock.amountAt(day)).toBeCloseTo(215, 9);
  });

  it("share one curve, but for the clamped methods, which draw one for each pair of thresholds", () => {
    const series = dailyTemperatures("2026-05-01", Array(30).fill(8), Array(30).fill(24));
    const drawn = (method: "single-sine" | "clamped-average" | "clamped-mean"): boolean => {
      const curve = curveOf(series, { method, place: null, zone: ZONE, from });
      const [one, two] = [10, 12].map((lower) =>
        curve({ lower, upper: 30, zero: Infinity, atUpper: -1, atZero: 0, stop: 0, cutoff: "horizontal" }),
      );
      return one === two;
    };
    expect(drawn("single-sine")).toBe(true);
    expect(drawn("clamped-average")).toBe(false);
    expect(drawn("clamped-mean")).toBe(false);
  });
});

describe("the reason why there is no date", () => {
  const from = at("2026-05-03");
  const reason = (series: TemperatureSeries) => absenceOf(distinct(clocks(series, from)), ZONE);
  const days = (max: readonly number[]) =>
    dailyTemperatures(
      "2026-05-03",
      max.map((one) => one - 8),
      max,
    );

  it("is the cold only where all temperatures were seen", () => {
    expect(reason(days([11, 11.5, 9]))).toEqual({
      reason: "too-cold",
      message: "No development: the highest temperature is 11.5 °C and the lower threshold 11.5 °C.",
    });
    expect(reason(days([11, 11, Number.NaN, 11]))).toEqual({
      reason: "gap",
      message: "There is a gap in the temperatures from 2026-05-05 00:00 on; fill it to see further.",
    });
    expect(reason(days([20, 20, 20]))).toEqual({
      reason: "series-ends",
      message: "The temperatures end at 2026-05-06 00:00; later ones are needed to see further.",
    });
    expect(reason(constantTemperature(20))).toEqual({
      reason: "series-ends",
      message: "It is not reached within a hundred years at these temperatures.",
    });
  });
});
