import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { binomialInterval } from "../../src/cohort/binomial-interval.ts";
import { InputError } from "../../src/errors.ts";
import { season } from "../../src/rearing/season/season.ts";
import { dayInSeason, monthDayAt, seasonDay, seasonOf } from "../../src/rearing/season/season-calendar.ts";
import type { SeasonInput } from "../../src/rearing/season/season-result.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { pierisRapae } from "../../src/species/pieris-rapae.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";
import { shiftedDaily } from "../../src/temperature/shift.ts";
import { addDays, civilDay, dayNumber } from "../../src/time/civil-day.ts";
import { city } from "../support/city.ts";

const NEW_YORK = city("new-york");
const SEATTLE = city("seattle");

const ask = (change: Partial<SeasonInput> = {}) =>
  season({ lifeCycle: danausPlexippus, temperatures: NEW_YORK, hemisphere: "north", ...change });

/** The same temperatures on every day of some years. */
function always(min: number, max: number, years = 3): DailyTemperatures {
  const days = dayNumber(`${2021 + years}-01-01`) - dayNumber("2021-01-01");
  return dailyTemperatures("2021-01-01", Array(days).fill(min), Array(days).fill(max));
}

function withDay(record: DailyTemperatures, day: string, min: number): DailyTemperatures {
  const lows = Float64Array.from(record.min);
  lows[dayNumber(day) - dayNumber(record.start)] = min;
  return dailyTemperatures(record.start, lows, record.max);
}

const placeOf = (day: string | null): number => (day === null ? -Infinity : dayNumber(day));

describe("season", () => {
  it("takes each season of a record as one, with its broods and its end", () => {
    const { years, broods, leftOut, lastEggs } = ask({ firstEggs: "05-20" });
    expect(years.map(({ label }) => label)).toEqual(["2012", "2013", "2014", "2015"]);
    expect(leftOut).toEqual([]);
    for (const { firstEggs, label, complete, broods: own, ends } of years) {
      expect(firstEggs).toBe(`${label}-05-20`);
      expect(own.filter(({ adults }) => adults !== null)).toHaveLength(complete);
      expect(ends?.slice(0, 4)).toBe(label);
      // In every brood adults come after eggs, and eggs of the next 6.5 days after them.
      own.forEach(({ eggs, adults }, i) => {
        const next = own[i + 1];
        if (adults !== null) expect(adults > eggs).toBe(true);
        if (next !== undefined)
          expect(dayNumber(next.eggs) - dayNumber(adults ?? "")).toBeGreaterThanOrEqual(6);
      });
    }
    expect(broods.map(({ number }) => number)).toEqual(broods.map((_, i) => i + 1));
    expect(lastEggs.byDate[0]?.share).toBe(1);
    expect(lastEggs.byDate.at(-1)?.share).toBe(0);
  });

  it.each([
    ["new-york", NEW_YORK],
    ["seattle", SEATTLE],
  ])("%s: the last eggs are what adding up degree-days by hand gives", (_, record) => {
    // The middle animal: 352 degree-days from the middle of the day up to the season's end, whole days added up by
    // the closed form of a day. The half day and the hour within it leave a day either way.
    const { years } = ask({ temperatures: record, share: 0.5 });
    const first = dayNumber(record.start);
    const heat = Array.from(record.min, (min, i) =>
      degreeDays({ min, max: record.max[i] ?? min }, { lower: 11.5, upper: 33, method: "single-sine" }),
    );
    for (const { lastEggs, ends } of years) {
      let [sum, day] = [0, dayNumber(ends ?? "") - first];
      while (sum < 352) sum += heat[--day] ?? 0;
      expect(Math.abs(dayNumber(lastEggs ?? "") - first - day)).toBeLessThanOrEqual(1);
    }
  });

  it("counts years as trials, with the interval of their share", () => {
    const { lastEggs, years, level } = ask();
    for (const { date, years: made, of, share, lower, upper } of lastEggs.byDate) {
      expect(of).toBe(4);
      expect(made).toBe(years.filter((year) => (year.lastEggs ?? "").slice(5) >= date).length);
      expect(share).toBe(made / 4);
      expect({ lower, upper }).toEqual(binomialInterval(made, 4, { level }));
    }
  });

  it("names a prudent date from three years on, before the earliest where years differ", () => {
    const { lastEggs } = ask();
    expect((lastEggs.prudent?.date ?? "") < (lastEggs.spread?.earliest ?? "")).toBe(true);
    const two = dailyTemperatures(
      NEW_YORK.start,
      NEW_YORK.min.subarray(0, 731),
      NEW_YORK.max.subarray(0, 731),
    );
    expect(ask({ temperatures: two }).lastEggs.prudent).toBeNull();
  });

  it("ends with the first frost after midsummer, with lasting cold, or not at all", () => {
    const warm = always(16, 26);
    const frost = ask({ temperatures: withDay(warm, "2021-09-15", -1), firstEggs: "05-01" });
    expect(frost.years[0]).toMatchObject({ ends: "2021-09-15", endsBy: "frost", firstFrost: "2021-09-15" });
    expect(frost.years[1]).toMatchObject({ ends: null, endsBy: "nothing", lastEggs: null });
    // A frost in spring is not the end, and none is where frost was not to count.
    const spring = withDay(warm, "2021-03-15", -1);
    expect(ask({ temperatures: spring }).years[0]?.endsBy).toBe("nothing");
    expect(ask({ temperatures: withDay(warm, "2021-09-15", -1), frostBelow: null }).years[0]?.endsBy).toBe(
      "nothing",
    );
    expect(ask({ temperatures: withDay(warm, "2021-09-15", 0) }).years[0]?.endsBy).toBe("nothing");
    expect(ask({ firstEggs: "05-01" }).years.map(({ endsBy }) => endsBy)).toContain("cold");
  });

  it("has no last eggs where nothing ends the season, and counts broods up to midwinter", () => {
    const { lastEggs, years, notes } = ask({ temperatures: always(15, 25) });
    expect(lastEggs).toEqual({ byDate: [], spread: null, prudent: null });
    // 352 degree-days at 8.5 a day and 6.5 days to the next eggs: 47.9 days a brood, 7 in the year.
    expect(years[0]?.complete).toBe(7);
    expect(notes.map(({ code }) => code)).toContain("warm-all-year");
  });

  it("has nothing to count where it is never warm", () => {
    const cold = ask({ temperatures: always(1, 8) });
    expect(cold.broods).toEqual([]);
    expect(cold.firstEggs).toBeNull();
    expect(cold.years[0]).toMatchObject({ firstEggs: null, complete: 0, lastEggs: null, endsBy: "cold" });
  });

  it("goes on without further broods where the time to the first eggs is not known", () => {
    const unknown = ask({ lifeCycle: pierisRapae });
    expect(Math.max(...unknown.years.map(({ broods }) => broods.length))).toBe(1);
    expect(unknown.notes.map(({ code }) => code)).toContain("pre-laying-unknown");
    const known = ask({ lifeCycle: pierisRapae, preLayingDays: 4 });
    expect(known.preLaying).toMatchObject({ value: 4, source: "given by you" });
    expect(known.broods.length).toBeGreaterThan(2);
  });

  it("dates the first eggs by a date, by degree-days or by temperature, and says which", () => {
    expect(ask({ firstEggs: "05-20" }).firstEggsBy).toBe("date");
    const heat = ask({ firstEggs: { degreeDays: 100 } });
    expect(heat.firstEggsBy).toBe("degree-days");
    const bare = ask();
    expect(bare.firstEggsBy).toBe("temperature");
    const note = bare.notes.find(({ code }) => code === "first-eggs-by-temperature");
    expect(note?.message).toContain("Whether females are there");
    // Development goes on from there, so the hundred degree-days come after it.
    bare.years.forEach(({ firstEggs }, i) =>
      expect(placeOf(firstEggs)).toBeLessThan(placeOf(heat.years[i]?.firstEggs ?? null)),
    );
  });

  it("takes 28 February for a 29th that a year lacks", () => {
    const { years } = ask({ firstEggs: "02-29" });
    expect(years.map(({ firstEggs }) => firstEggs)).toEqual([
      "2012-02-29",
      "2013-02-28",
      "2014-02-28",
      "2015-02-28",
    ]);
  });

  it("asks for what else the last eggs must reach, and of how many", () => {
    const adult = ask({ share: 0.5 });
    const pupa = ask({ share: 0.5, milestone: "pupa" });
    const most = ask({ share: 0.99 });
    adult.years.forEach(({ lastEggs }, i) => {
      expect(placeOf(pupa.years[i]?.lastEggs ?? null)).toBeGreaterThan(placeOf(lastEggs));
      expect(placeOf(most.years[i]?.lastEggs ?? null)).toBeLessThan(placeOf(lastEggs));
    });
  });

  it("is plain data", () => {
    const outlook = ask({ place: { latitude: 40.8, longitude: -74 } });
    expect(JSON.parse(JSON.stringify(outlook))).toEqual(outlook);
  });
});

describe("season, day length", () => {
  const { broods, notes } = ask({ place: { latitude: 40.8, longitude: -74 }, firstEggs: "05-20" });

  it("is said for the emergence of each brood, with its change", () => {
    const late = broods.filter(({ adults }) => (adults?.middle ?? "") > "07-01");
    expect(late.length).toBeGreaterThan(1);
    for (const { dayLength } of late) expect(dayLength?.minutesAWeek).toBeLessThan(0);
    expect(ask().broods.every(({ dayLength }) => dayLength === null)).toBe(true);
  });

  it("carries the caution on shortening days, without a switch: nothing is cut off", () => {
    const note = notes.find(({ code }) => code === "shortening-days");
    expect(note?.message).toContain("Goehring & Oberhauser 2002");
    expect(note?.message).toContain("This is not reckoned with");
    expect(ask().broods.map(({ years }) => years)).toEqual(
      ask({ place: { latitude: 60, longitude: 0 } }).broods.map(({ years }) => years),
    );
  });
});

describe("season, south of the equator", () => {
  // New York moved by half a year: no such place exists.
  const moved = dailyTemperatures("2012-07-01", NEW_YORK.min, NEW_YORK.max);
  const south = season({ lifeCycle: danausPlexippus, temperatures: moved });
  const north = ask();

  it("is recognised by its warm January, which is said, or by its place", () => {
    expect(south.hemisphere).toBe("south");
    expect(south.notes.map(({ code }) => code)).toContain("season-side-assumed");
    const placed = season({
      lifeCycle: danausPlexippus,
      temperatures: moved,
      place: { latitude: -37, longitude: 145 },
    });
    expect(placed.hemisphere).toBe("south");
    expect(placed.notes.map(({ code }) => code)).not.toContain("season-side-assumed");
  });

  it("crosses the new year with the same broods and the same last eggs", () => {
    expect(south.years.map(({ label }) => label)).toEqual(["2012/13", "2013/14", "2014/15", "2015/16"]);
    south.years.forEach((year, i) => {
      const same = north.years[i];
      const moves = dayNumber("2012-07-01") - dayNumber("2012-01-01");
      expect(year.complete).toBe(same?.complete);
      for (const key of ["lastEggs", "firstEggs", "ends"] as const)
        expect(dayNumber(year[key] ?? "") - moves).toBe(dayNumber(same?.[key] ?? ""));
    });
  });

  it("keeps the dates of a season in order, over the new year", () => {
    const dates = south.lastEggs.byDate.map(({ date }) => date);
    expect(new Set(dates).size).toBe(dates.length);
    const shares = south.lastEggs.byDate.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
  });
});

describe("season, laws", () => {
  it("a warmer record never has earlier last eggs, a later begin or fewer broods", () => {
    fc.assert(
      fc.property(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 0, max: 40 }), (base, more) => {
        const at = (tenths: number) => ask({ temperatures: shiftedDaily(NEW_YORK, () => tenths / 10) });
        const [cool, warm] = [at(base), at(base + more)];
        cool.years.forEach((year, i) => {
          const other = warm.years[i];
          if (other === undefined) return;
          if (other.endsBy !== "nothing")
            expect(placeOf(other.lastEggs)).toBeGreaterThanOrEqual(placeOf(year.lastEggs));
          if (year.firstEggs !== null) expect((other.firstEggs ?? "") <= year.firstEggs).toBe(true);
          expect(other.complete).toBeGreaterThanOrEqual(year.complete);
        });
      }),
      { numRuns: 12, seed: 3 },
    );
  });

  it("a frost limit that is higher never gives later last eggs", () => {
    const at = (frostBelow: number) =>
      ask({ frostBelow, temperatures: SEATTLE }).years.map(({ lastEggs }) => placeOf(lastEggs));
    const limits = [-4, -2, 0, 2, 4].map(at);
    limits
      .slice(1)
      .forEach((days, k) => days.forEach((day, i) => expect(day).toBeLessThanOrEqual(limits[k]?.[i] ?? 0)));
  });
});

describe("season, refusals", () => {
  it.each<[string, Partial<SeasonInput>, string]>([
    ["a share of all", { share: 1 }, "share is 1"],
    ["a level of none", { level: 0 }, "level is 0"],
    ["a month and date that do not exist", { firstEggs: "02-30" }, 'firstEggs is "02-30"'],
    ["a whole day as first eggs", { firstEggs: "2026-05-20" }, "written MM-DD"],
    ["negative degree-days", { firstEggs: { degreeDays: -1 } }, "firstEggs.degreeDays is -1"],
    ["negative days", { preLayingDays: -1 }, "preLayingDays is -1"],
    ["a frost limit that is no number", { frostBelow: Number.NaN }, "frostBelow"],
    ["a milestone that is none", { milestone: "egg" }, 'milestone is "egg"'],
    ["a hemisphere that is none", { hemisphere: "east" as never }, "north or south"],
    ["a place that is none", { place: { latitude: 95, longitude: 0 } }, "place.latitude"],
    [
      "a record without a summer",
      { temperatures: dailyTemperatures("2026-01-01", Array(90).fill(1), Array(90).fill(9)) },
      "hold no whole season",
    ],
    [
      "a gap",
      { temperatures: dailyTemperatures("2026-01-01", [1, NaN, 3], [5, NaN, 7]) },
      "there is no temperature for 2026-01-02",
    ],
  ])("refuses %s", (_, change, says) => {
    expect(() => ask(change)).toThrow(InputError);
    expect(() => ask(change)).toThrow(says);
  });

  it("leaves out seasons that the record does not cover, and names them", () => {
    const from = dayNumber("2013-03-01") - dayNumber(NEW_YORK.start);
    const part = dailyTemperatures(
      "2013-03-01",
      NEW_YORK.min.subarray(from, from + 900),
      NEW_YORK.max.subarray(from, from + 900),
    );
    const { years, leftOut, notes } = ask({ temperatures: part });
    expect(years.map(({ label }) => label)).toEqual(["2014"]);
    expect(leftOut).toEqual(["2013", "2015"]);
    expect(notes.find(({ code }) => code === "years-left-out")?.message).toContain("2013, 2015");
  });
});

describe("the calendar of seasons", () => {
  it.each(["north", "south"] as const)(
    "%s: every date has one place, in order, in leap years and others",
    (side) => {
      for (const year of [2011, 2012, 2013, 2015, 2016]) {
        const span = seasonOf(year, side);
        let last = -1;
        for (let day = dayNumber(span.from); day < dayNumber(span.next); day++) {
          const place = seasonDay(civilDay(day), span, side);
          expect(place).toBeGreaterThan(last);
          last = place;
          expect(monthDayAt(place, side)).toBe(civilDay(day).slice(5));
          expect(dayInSeason(civilDay(day).slice(5), span)).toBe(civilDay(day));
        }
        expect(span.turn > span.from && span.next > span.turn && span.nextTurn > span.next).toBe(true);
        expect(addDays(span.from, 364) < span.next).toBe(true);
      }
    },
  );
});
