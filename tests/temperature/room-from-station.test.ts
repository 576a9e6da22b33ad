import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { roomNotes, roomTemperatures } from "../../src/temperature/room-from-station.ts";
import { roomMembers } from "../../src/temperature/room-members.ts";
import { relateRoom } from "../../src/temperature/room-relation.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { degrees } from "../support/arbitraries.ts";
import { refusalOf } from "../support/refusal.ts";
import { type Room, inventedLogger, inventedStation } from "../support/room.ts";

// All temperatures here are invented.
const shelf: Room = { offset: 12, damping: 0.5, rangeRatio: 0.3, scatter: 0.4 };
const station = inventedStation("2026-06-01", 30);
const relation = relateRoom(inventedLogger(station, shelf), station);

describe("relateRoom", () => {
  test("finds what made the room", () => {
    const within = (
      { value, standardError }: { value: number; standardError: number },
      truth: number,
    ): void => {
      expect(Math.abs(value - truth)).toBeLessThan(3 * standardError + 1e-4);
    };
    within(relation.damping, 0.5);
    within(relation.offset, 12);
    within(relation.rangeRatio, 0.3);
    within(relation.level, 12 + 0.5 * relation.stationMean);
    expect(relation).toMatchObject({ days: 28, from: "2026-06-02", to: "2026-06-29", notes: [] });
    // Uniform from -0.4 to 0.4: the median distance is 0.2, and a scale takes it for 0.6745 of a deviation.
    expect(relation.residualDeviation).toBeGreaterThan(0.15);
    expect(relation.residualDeviation).toBeLessThan(0.45);
  });

  test("without scatter it finds them exactly", () => {
    // Small jumps, so that midnight lies within the extremes of both days.
    const calm = inventedStation("2026-06-01", 30, { jump: 0.5 });
    fc.assert(
      fc.property(degrees(-5, 20), degrees(0, 1.2), degrees(0.6, 1.2), (offset, damping, rangeRatio) => {
        const made = relateRoom(inventedLogger(calm, { offset, damping, rangeRatio, scatter: 0 }), calm);
        expect(made.damping.value).toBeCloseTo(damping, 4);
        expect(made.offset.value).toBeCloseTo(offset, 3);
        expect(made.rangeRatio.value).toBeCloseTo(rangeRatio, 4);
        expect(made.level.standardError).toBeLessThan(1e-3);
      }),
      { numRuns: 20 },
    );
  });

  test("a day with the cage somewhere else hardly counts", () => {
    const logger = inventedLogger(station, shelf);
    const moved = temperatureReadings(
      logger.at,
      logger.temperature.map((one, i) => (i >= 250 && i < 275 ? one + 15 : one)),
      { clock: "local" },
    );
    const other = relateRoom(moved, station);
    expect(Math.abs(other.level.value - relation.level.value)).toBeLessThan(0.15);
    expect(Math.abs(other.damping.value - relation.damping.value)).toBeLessThan(0.05);
  });

  test("errors hold the truth about as often as they say, and shrink with days", () => {
    const runs = 100;
    const made = { ...shelf, rangeRatio: 0.6, rangeScatter: 0.1 };
    const held = { damping: 0, level: 0, rangeRatio: 0 };
    for (let seed = 1; seed <= runs; seed++) {
      const days = inventedStation("2026-06-01", 40, { seed, jump: 1 });
      const found = relateRoom(inventedLogger(days, made, 1000 + seed), days);
      const truth = { damping: 0.5, level: 12 + 0.5 * found.stationMean, rangeRatio: 0.6 };
      for (const name of ["damping", "level", "rangeRatio"] as const) {
        const { value, standardError } = found[name];
        if (Math.abs(value - truth[name]) <= 1.96 * standardError) held[name]++;
      }
    }
    // Of 100 intervals that each hold with a chance of 95 %, 88 or more do in 99.6 % of cases (derived, binomial).
    expect(Math.min(held.damping, held.level, held.rangeRatio)).toBeGreaterThanOrEqual(88);
    const long = inventedStation("2026-05-01", 120);
    const longer = relateRoom(inventedLogger(long, shelf), long);
    expect(longer.damping.standardError).toBeLessThan(relation.damping.standardError);
  });

  test("days that stick together widen the errors", () => {
    const days = inventedStation("2026-05-01", 60);
    const drift = inventedLogger(days, { ...shelf, scatter: 0 });
    const slow = temperatureReadings(
      drift.at,
      drift.temperature.map((one, i) => one + Math.sin(i / 100)),
      { clock: "local" },
    );
    const sticking = relateRoom(slow, days);
    expect(sticking.autocorrelation).toBeGreaterThan(0.5);
    expect(relation.autocorrelation).toBeLessThan(0.4);
  });

  test("sun on the cage is said, a heated room is not called that", () => {
    const sunny = relateRoom(
      inventedLogger(station, { offset: 1, damping: 1.1, rangeRatio: 1.5, scatter: 0.3 }),
      station,
    );
    expect(sunny.notes.map(({ code }) => code)).toEqual(["sun-on-the-cage"]);
    expect(sunny.notes[0]?.message).toContain("Shade");
    expect(sunny.maxAbove).toBeGreaterThan(3);
    const steep = { offset: -6, damping: 1.3, rangeRatio: 1, scatter: 0.3 };
    expect(relateRoom(inventedLogger(station, steep), station).notes).toHaveLength(1);
    const winter = inventedStation("2026-01-01", 30, { mean: 2 });
    const heated = { offset: 20.5, damping: 0.05, rangeRatio: 0.2, scatter: 0.3 };
    const room = relateRoom(inventedLogger(winter, heated), winter);
    expect(room.maxAbove).toBeGreaterThan(10);
    expect(room.notes).toEqual([]);
  });

  test("uses only observed days, and says when there are too few", () => {
    const logger = inventedLogger(station, shelf);
    const forecast = dailyTemperatures(station.start, station.min, station.max, "forecast");
    expect(refusalOf(() => relateRoom(logger, forecast))).toMatchObject({
      code: "too-few-readings",
      value: 0,
    });
    const short = inventedStation("2026-06-01", 12);
    expect(refusalOf(() => relateRoom(inventedLogger(short, shelf), short)).message).toContain(
      "10 complete days",
    );
    expect(relateRoom(inventedLogger(short, shelf), short, { atLeast: 8 }).days).toBe(10);
    const holed = dailyTemperatures(
      station.start,
      station.min.map((one, i) => (i === 9 ? Number.NaN : one)),
      station.max,
    );
    expect(relateRoom(logger, holed).days).toBe(27);
  });

  test("refuses weather that does not change, and options that cannot be", () => {
    const even = dailyTemperatures(
      "2026-06-01",
      Array.from({ length: 30 }, () => 15),
      Array.from({ length: 30 }, () => 25),
    );
    expect(refusalOf(() => relateRoom(inventedLogger(even, shelf), even)).message).toContain(
      "different weather",
    );
    const logger = inventedLogger(station, shelf);
    expect(refusalOf(() => relateRoom(logger, station, { atLeast: 4 })).path).toEqual(["atLeast"]);
    expect(refusalOf(() => relateRoom(logger, station, { zone: "Nowhere" })).code).toBe("invalid-zone");
    const utc = temperatureReadings(logger.at, logger.temperature);
    expect(refusalOf(() => relateRoom(utc, station)).code).toBe("zone-needed");
    expect(relateRoom(utc, station, { zone: "UTC" })).toEqual(relation);
  });

  test("is plain data", () => {
    expect(JSON.parse(JSON.stringify(relation))).toEqual(relation);
  });
});

describe("roomTemperatures", () => {
  test("has the mean and the range that the relation says, marked as estimated; holes stay holes", () => {
    const days = dailyTemperatures("2026-07-01", [10, Number.NaN, 20], [20, 25, 30]);
    const room = roomTemperatures(days, relation);
    const { offset, damping, rangeRatio } = relation;
    expect(room.origin).toEqual(["estimated", "estimated", "estimated"]);
    expect(((room.min[0] ?? 0) + (room.max[0] ?? 0)) / 2).toBeCloseTo(offset.value + damping.value * 15, 10);
    expect((room.max[2] ?? 0) - (room.min[2] ?? 0)).toBeCloseTo(rangeRatio.value * 10, 10);
    expect([room.min[1], room.max[1]]).toEqual([Number.NaN, Number.NaN]);
  });

  test("a ratio below 0 is taken as no range", () => {
    const flat = { ...relation, rangeRatio: { value: -0.1, standardError: 0.1 } };
    const room = roomTemperatures(dailyTemperatures("2026-07-01", [10], [20]), flat);
    expect(room.min).toEqual(room.max);
  });

  test("days beyond the compared ones are said", () => {
    expect(roomNotes(station, relation).length).toBeLessThanOrEqual(1);
    const hot = dailyTemperatures("2026-07-01", [30, 12], [40, 25]);
    const [note] = roomNotes(hot, relation);
    expect(note).toMatchObject({ code: "station-outside-overlap" });
    expect(note?.message).toContain("1 of 2 days");
  });
});

describe("roomMembers", () => {
  const days = inventedStation("2026-07-01", 20);

  /** Each member's middle temperature on a day, with its weight. */
  function middlesOf(
    ensemble: ReturnType<typeof roomMembers>,
    day: number,
  ): { middle: number; weight: number }[] {
    return ensemble.groups.flatMap(({ members, weight }) =>
      members.map((series) => {
        if (series.kind !== "daily") throw new Error("a member is a daily series");
        const middle = ((series.min[day] ?? Number.NaN) + (series.max[day] ?? Number.NaN)) / 2;
        return { middle, weight: weight / members.length };
      }),
    );
  }

  test.each([1, 2, 3, 4])("%d nodes: weights add up, mean and spread are the relation's", (k) => {
    const ensemble = roomMembers(days, relation, k);
    const middles = middlesOf(ensemble, 3);
    expect([ensemble.kind, ensemble.from, middles.length]).toEqual(["ensemble", "2026-07-01", k ** 3]);
    const total = middles.reduce((sum, { weight }) => sum + weight, 0);
    const mean = middles.reduce((sum, { weight, middle }) => sum + weight * middle, 0);
    const variance = middles.reduce((sum, { weight, middle }) => sum + weight * (middle - mean) ** 2, 0);
    const outside = ((days.min[3] ?? 0) + (days.max[3] ?? 0)) / 2 - relation.stationMean;
    expect(total).toBeCloseTo(1, 12);
    expect(mean).toBeCloseTo(relation.level.value + relation.damping.value * outside, 10);
    const expected = relation.level.standardError ** 2 + (relation.damping.standardError * outside) ** 2;
    expect(variance).toBeCloseTo(k === 1 ? 0 : expected, 10);
  });

  // A rule of k nodes gives the moments of the standard normal, 0, 1, 0, 3, 0, 15, up to order 2k - 1 (derived
  // from the definition): here from the members' levels.
  test.each([2, 3, 4])("a rule of %d nodes has the moments of the normal distribution", (k) => {
    const unit = {
      ...relation,
      level: { value: 0, standardError: 1 },
      damping: { value: 0, standardError: 0 },
      rangeRatio: { value: 0, standardError: 0 },
    };
    const middles = middlesOf(roomMembers(dailyTemperatures("2026-07-01", [10], [20]), unit, k), 0);
    const moments = [1, 0, 1, 0, 3, 0, 15, 0];
    for (let order = 0; order < 2 * k; order++) {
      const moment = middles.reduce((sum, { middle, weight }) => sum + weight * middle ** order, 0);
      expect(moment).toBeCloseTo(moments[order] ?? Number.NaN, 10);
    }
  });

  test.each([0, 5, 1.5])("refuses %d nodes", (k) => {
    expect(refusalOf(() => roomMembers(days, relation, k))).toMatchObject({
      code: "invalid-option",
      path: ["k"],
    });
  });
});
