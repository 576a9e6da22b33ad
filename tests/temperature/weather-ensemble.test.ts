import { describe, expect, it } from "vitest";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { arcTemperature } from "../../src/diurnal/arc.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { normalTemperatures, normalsOf } from "../../src/temperature/normals.ts";
import { normalsEnsemble } from "../../src/temperature/normals-ensemble.ts";
import { restartOf, sameDate } from "../../src/temperature/past-trace.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";

const newYork = city("new-york");

/** Maximum of a civil day on a series, as its curve has it. */
function maximumOn(series: TemperatureSeries, day: string): number {
  const from = startOfDay(day, null);
  const { arcs } = timelineOf(series, {
    method: "single-sine",
    zone: null,
    from,
    limits: { lower: 0, upper: 50 },
  });
  const within = arcs.filter((arc) => arc.from >= from && arc.to <= from + DAY_MS);
  return Math.max(...within.flatMap((arc) => [arcTemperature(arc, arc.u0), arcTemperature(arc, arc.u1)]));
}

const maxima = new Map(
  Array.from(newYork.max, (max, i) => [new Date(Date.UTC(2012, 0, 1 + i)).toISOString().slice(0, 10), max]),
);

describe("days ahead", () => {
  const known = dailyTemperatures("2015-06-01", Array<number>(10).fill(15), Array<number>(10).fill(25));
  const daysFrom = (start: string, count: number) =>
    dailyTemperatures(start, Array<number>(count).fill(15), Array<number>(count).fill(25));
  const withForecast = (ahead: ReturnType<typeof daysFrom>, observed: TemperatureSeries = known) =>
    weatherEnsemble({ observed, forecast: ahead, past: newYork, exclude: [2015] });
  const withNormals = (normals: ReturnType<typeof daysFrom>) =>
    normalsEnsemble({ observed: known, normals, standardDeviation: 3, autocorrelation: 0.6 });

  it.each([
    ["that leave a hole", "2015-06-12", 5],
    ["that are over", "2015-05-12", 5],
    ["that end with what is known", "2015-06-06", 5],
  ])("%s are refused", (_, start, count) => {
    for (const make of [withForecast, withNormals]) {
      const { code, message } = refusalOf(() => make(daysFrom(start, count)));
      expect(code).toBe("start-outside-series");
      expect(message).toContain(`runs from ${start} to`);
      expect(message).toContain("Give days from 2015-06-11 on");
    }
  });

  it.each([
    ["2015-06-11", 1],
    ["2015-06-05", 7],
  ])("from %s on, %i of them, follow", (start, count) => {
    expect(withForecast(daysFrom(start, count)).from).toBe("2015-06-11");
    expect(withNormals(daysFrom(start, count)).from).toBe("2015-06-11");
  });

  it("may begin on the last day of readings in UTC in any zone, and no later", () => {
    const at = Array.from({ length: 48 }, (_, i) => Date.UTC(2015, 5, 9, i));
    const readings = temperatureReadings(at, Array<number>(48).fill(20), { clock: "utc" });
    expect(() => withForecast(daysFrom("2015-06-11", 5), readings)).not.toThrow();
    expect(refusalOf(() => withForecast(daysFrom("2015-06-12", 5), readings)).code).toBe(
      "start-outside-series",
    );
  });
});

describe("weatherEnsemble", () => {
  it("is the observed days, then the same dates of each past year", () => {
    const ensemble = weatherEnsemble({
      observed: newYork,
      until: "2015-06-15",
      past: newYork,
      exclude: [2015],
    });
    const [group] = ensemble.groups;
    expect(ensemble.groups).toHaveLength(1);
    expect(group?.members).toHaveLength(3);
    expect([ensemble.from, group?.label, group?.weight]).toEqual(["2015-06-16", "2012, 2013, 2014", 1]);
    group?.members.forEach((member, i) => {
      expect(maximumOn(member, "2015-06-10")).toBe(maxima.get("2015-06-10"));
      expect(maximumOn(member, "2015-07-10")).toBe(maxima.get(`${2012 + i}-07-10`));
    });
    expect(ensemble.about).toContain("3 past years (2012, 2013, 2014)");
  });

  it("goes on from one past year into the next, and from the last into the first", () => {
    const ensemble = weatherEnsemble({ observed: newYork, until: "2015-12-30", past: newYork, exclude: [] });
    const last = ensemble.groups[0]?.members.at(-1);
    expect(last && maximumOn(last, "2015-12-31")).toBe(maxima.get("2015-12-31"));
    expect(last && maximumOn(last, "2016-01-05")).toBe(maxima.get("2012-01-05"));
    const first = ensemble.groups[0]?.members[0];
    expect(first && maximumOn(first, "2016-01-05")).toBe(maxima.get("2013-01-05"));
  });

  it("starts 29 February on the 28th of a year that has none, and counts on from there", () => {
    const ensemble = weatherEnsemble({
      observed: newYork,
      until: "2012-02-28",
      past: newYork,
      exclude: [2012],
    });
    const [member] = ensemble.groups[0]?.members ?? [];
    expect(member && maximumOn(member, "2012-02-29")).toBe(maxima.get("2013-02-28"));
    expect(member && maximumOn(member, "2012-03-01")).toBe(maxima.get("2013-03-01"));
    expect([
      sameDate("2012-02-29", 2013),
      sameDate("2012-02-29", 2016),
      sameDate("2012-06-01", 1999),
    ]).toEqual(["2013-02-28", "2016-02-29", "1999-06-01"]);
    expect(restartOf(newYork)).toBe(0);
  });

  it("lets a forecast be off by its error, more with each day, and weighs how likely that is", () => {
    const ahead = dailyTemperatures("2015-06-16", [15, 15, 15], [25, 25, 25], "forecast");
    const { groups, about } = weatherEnsemble({
      observed: newYork,
      until: "2015-06-15",
      past: newYork,
      exclude: [2015],
      forecast: ahead,
      forecastError: { firstDay: 1, perDay: 0.5 },
    });
    expect(groups).toHaveLength(5);
    expect(groups.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    // The spread of the five groups on the first and on the third day is the error that was stated.
    [1, 2].forEach((deviation, k) => {
      const day = `2015-06-${16 + 2 * k}`;
      const offs = groups.map(({ members, weight }) => {
        const [member] = members;
        return { off: (member ? maximumOn(member, day) : Number.NaN) - 25, weight };
      });
      expect(offs.reduce((sum, { off, weight }) => sum + off * weight, 0)).toBeCloseTo(0, 9);
      expect(offs.reduce((sum, { off, weight }) => sum + off * off * weight, 0)).toBeCloseTo(
        deviation ** 2,
        9,
      );
    });
    expect(groups.every(({ members }) => members.length === 3)).toBe(true);
    expect(about).toContain("a forecast to 2015-06-18");
    const [member] = groups[2]?.members ?? [];
    expect(member && maximumOn(member, "2015-06-19")).toBe(maxima.get("2012-06-19"));
  });

  it("takes readings as far as they go, to the minute", () => {
    const at = Array.from({ length: 12 }, (_, i) => startOfDay("2015-06-16", null) + i * 3_600_000);
    const readings = temperatureReadings(
      at,
      at.map(() => 40),
      { clock: "local" },
    );
    const { groups } = weatherEnsemble({
      observed: joinTemperatures(readings),
      past: newYork,
      exclude: [2015],
    });
    const [member] = groups[0]?.members ?? [];
    expect(member && maximumOn(member, "2015-06-16")).toBe(40);
    expect(member && maximumOn(member, "2015-06-17")).toBe(maxima.get("2012-06-17"));
  });

  it.each([
    [{ until: "2011-12-01" }, "start-outside-series", "run from 2012-01-01 to 2015-12-31"],
    [{ exclude: [2012, 2013, 2014, 2015] }, "no-temperatures", "no past year has"],
    [{ forecastError: { firstDay: -1, perDay: 0 } }, "invalid-option", "0 °C or more"],
  ])("refuses %j", (change, code, text) => {
    const ahead = dailyTemperatures("2015-06-16", [15], [25], "forecast");
    const refusal = refusalOf(() =>
      weatherEnsemble({ observed: newYork, until: "2015-06-15", past: newYork, forecast: ahead, ...change }),
    );
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it("refuses past years with a gap, and a temperature held for ever", () => {
    const max = newYork.max.slice();
    max[200] = Number.NaN;
    const holey = dailyTemperatures("2012-01-01", newYork.min, max);
    const gap = refusalOf(() => weatherEnsemble({ observed: newYork, until: "2015-06-15", past: holey }));
    expect([gap.code, gap.message.includes("2012-07-19")]).toEqual(["missing-temperature", true]);
    expect(
      refusalOf(() => weatherEnsemble({ observed: constantTemperature(20), past: newYork })).message,
    ).toContain("held for ever");
    const readings = temperatureReadings([0, 1000], [1, 2], { clock: "local" });
    expect(
      refusalOf(() => weatherEnsemble({ observed: readings, until: "2015-06-15", past: newYork })).code,
    ).toBe("invalid-option");
  });
});

describe("normalsEnsemble", () => {
  const normals = normalTemperatures(normalsOf(newYork), "2015-06-01", "2015-12-31");

  it("spreads as a sum of days does that carry over from one to the next", () => {
    const [standardDeviation, autocorrelation] = [3, 0.5];
    const { groups } = normalsEnsemble({
      observed: newYork,
      until: "2015-06-15",
      normals,
      standardDeviation,
      autocorrelation,
    });
    const days = ["2015-06-16", "2015-06-17", "2015-06-18", "2015-06-19"];
    const sums = groups.map(({ members, weight }) => {
      const [member] = members;
      const anomaly = days.reduce((sum, day) => {
        const normal =
          normals.max[Math.round((Date.parse(day) - Date.parse("2015-06-01")) / DAY_MS)] ?? Number.NaN;
        return sum + (member ? maximumOn(member, day) : Number.NaN) - normal;
      }, 0);
      return { anomaly, weight };
    });
    const variance = sums.reduce((sum, { anomaly, weight }) => sum + anomaly ** 2 * weight, 0);
    // Variance of a long sum of an autoregressive series: n·s²·(1 + r)/(1 - r).
    expect(variance).toBeCloseTo(4 * 9 * 3, 6);
    expect(groups.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it.each([
    [-1, 0.5],
    [3, 1],
    [3, -0.1],
    [Number.NaN, 0.5],
  ])("refuses a deviation of %d with a correlation of %d", (standardDeviation, autocorrelation) => {
    const parts = { observed: newYork, until: "2015-06-15", normals, standardDeviation, autocorrelation };
    expect(["invalid-option", "invalid-number"]).toContain(refusalOf(() => normalsEnsemble(parts)).code);
  });
});
