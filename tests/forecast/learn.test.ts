import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LogEntry, logEntry } from "../../src/cohort/log.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import { normalCdf } from "../../src/numeric/normal-distribution.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { refusalOf } from "../support/refusal.ts";

const START = Date.parse("2026-06-01T00:00:00Z");
const input = {
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2026-06-01T00:00", age: "new" },
  temperatures: constantTemperature(24),
  zone: null,
} as const;

/** The log of a cohort whose animals all need `pace` times the constants, looked at every `hours` hours. */
function logOf(pace: number, hours = 6, temperature = 24): LogEntry[] {
  let need = 0;
  return danausPlexippus.stages.slice(0, -1).map(({ degreeDays }, i) => {
    need += degreeDays.value * pace;
    const begins = (need / (temperature - 11.5)) * 24;
    const look = Math.ceil(begins / hours) * hours;
    const at = (hour: number): string => new Date(START + hour * 3_600_000).toISOString().slice(0, 16);
    return logEntry({
      stage: danausPlexippus.stages[i + 1]?.stage ?? "adult",
      on: at(look),
      notYet: at(look - hours),
      count: 5,
    });
  });
}

const width = (begins: { early: string | null; late: string | null } | undefined): number =>
  (Date.parse(begins?.late ?? "") - Date.parse(begins?.early ?? "")) / DAY_MS;

describe("learn", () => {
  it("finds the pace of a cohort from its log", () => {
    fc.assert(
      fc.property(fc.integer({ min: 85, max: 118 }), (percent) => {
        const { pace, aside } = learn(input, logOf(percent / 100));
        expect(aside).toEqual([]);
        expect(Math.abs(pace.middle - percent / 100)).toBeLessThan(0.03);
        expect(pace.low).toBeLessThan(pace.middle);
        expect(pace.high).toBeGreaterThan(pace.middle);
      }),
      { numRuns: 12 },
    );
  });

  it("believes what it believed before when the log is empty", () => {
    const { pace, from, used, offset } = learn(input, []);
    // The prior: lognormal around 1 with a coefficient of variation of 0.1.
    expect(pace.middle).toBeCloseTo(1, 2);
    expect(pace.high).toBeCloseTo(Math.exp(1.2816 * Math.sqrt(Math.log(1.01))), 2);
    expect([from, used, offset]).toEqual([null, [], null]);
  });

  it("narrows belief and window as the log fills", () => {
    const log = logOf(1.08);
    let before = { pace: Infinity, window: Infinity };
    for (const count of [0, 2, 4, 6]) {
      const learned = learn(input, log.slice(0, count));
      const adult = forecast({ ...input, learned }).stages.at(-1)?.begins;
      const now = { pace: learned.pace.high - learned.pace.low, window: width(adult) };
      expect(now.pace).toBeLessThan(before.pace);
      expect(now.window).toBeLessThan(before.window);
      before = now;
    }
  });

  it("forecasts at the pace learned, on from the last stage seen", () => {
    const log = logOf(1.1);
    const learned = learn(input, log);
    expect(learned.from?.stage).toBe("pupa");
    const result = forecast({ ...input, learned });
    expect(result.stages.map(({ stage }) => stage)).toEqual(["adult"]);
    const truth = START + ((352 * 1.1) / 12.5) * DAY_MS;
    const off = (Date.parse(`${result.stages[0]?.begins.expected}Z`) - truth) / DAY_MS;
    expect(Math.abs(off)).toBeLessThan(0.5);
    const blind = (Date.parse(`${forecast(input).stages.at(-1)?.begins.expected}Z`) - truth) / DAY_MS;
    expect(blind).toBeLessThan(-2);
    expect(result.learned).toMatchObject({ from: "pupa" });
    expect(result.notes.find(({ code }) => code === "learned-from-log")?.message).toContain("From 6 entries");
  });

  it("finds how far the thermometer is off, where it is told that it may be", () => {
    // Animals at 26 °C beside a thermometer that says 24: seen as pace and offset, which only differ by stage.
    const log = logOf(1, 6, 26);
    const blind = learn(input, log);
    expect(blind.pace.middle).toBeCloseTo(12.5 / 14.5, 1);
    const learned = learn(input, log, { offsetDeviation: 2, paceVariation: 0.02 });
    expect(learned.offset?.middle).toBeGreaterThan(1.2);
    expect(learned.offset?.middle).toBeLessThan(2.5);
    expect(Math.abs(learned.pace.middle - 1)).toBeLessThan(0.03);
    const expected = forecast({ ...input, learned }).stages.at(-1)?.begins.expected;
    expect(Math.abs(Date.parse(`${expected}Z`) - (START + (352 / 14.5) * DAY_MS)) / DAY_MS).toBeLessThan(0.8);
  });

  it("does not care in which order the log was written, nor whether animals share a line", () => {
    const log = logOf(0.95);
    const shuffled = [...log].reverse();
    expect(learn(input, shuffled).pace).toEqual(learn(input, log).pace);
    const lines = log.flatMap((entry) => Array.from({ length: entry.count }, () => ({ ...entry, count: 1 })));
    expect(learn(input, lines).pace.middle).toBeCloseTo(learn(input, log).pace.middle, 6);
  });

  it("skips stages that nobody saw", () => {
    const [, second, , , fifth] = logOf(1.05);
    const { pace, used } = learn(
      input,
      [second, fifth].flatMap((entry) => entry ?? []),
    );
    expect(used).toHaveLength(2);
    expect(Math.abs(pace.middle - 1.05)).toBeLessThan(0.04);
  });

  it("keeps contradictions aside with a plain reason and learns from the rest", () => {
    const log = logOf(1);
    const early = logEntry({ stage: "pupa", on: "2026-05-20", row: 9 });
    const rash = logEntry({ stage: "instar-5", on: "2026-06-08T12:00", notYet: "2026-06-08T06:00" });
    const dead = logEntry({ stage: "instar-2", on: "2026-06-08", fate: "died" });
    const egg = logEntry({ stage: "egg", on: "2026-06-01" });
    const learned = learn(input, [...log.slice(0, 2), early, rash, dead, egg]);
    const reason = (entry: LogEntry): string =>
      learned.aside.find((one) => one.entry === entry)?.reason ?? "";
    expect(reason(early)).toContain("pupa, 2026-05-20 (row 9): this is before");
    expect(reason(rash)).toContain("even at an unusual pace");
    expect(reason(dead)).toContain("counts for survival only");
    expect(reason(egg)).toContain("were found as egg");
    expect(learned.used).toHaveLength(2);
    // The egg of the day of the find is no news; the others are said.
    expect(learned.notes.map(({ code }) => code)).toEqual(Array(3).fill("log-kept-aside"));
  });

  it("is plain data and the same every time", () => {
    const learned = learn(input, logOf(1.02), { offsetDeviation: 1 });
    expect(JSON.parse(JSON.stringify(learned))).toEqual(learned);
    expect(learn(input, logOf(1.02), { offsetDeviation: 1 })).toEqual(learned);
    expect(learned.nodes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  });

  it.each([{ paceVariation: 0 }, { paceVariation: Number.NaN }, { offsetDeviation: -1 }])(
    "refuses %j by its name",
    (options) => {
      const refusal = refusalOf(() => learn(input, [], options));
      expect([refusal.code, refusal.path]).toEqual(["invalid-option", Object.keys(options)]);
    },
  );

  it.each([
    [{ paceVariation: 1 }, "paceVariation is 1; it must be a share between 0 and 1, such as 0.1."],
    [{ offsetDeviation: 20 }, "offsetDeviation is 20; it must be from 0 to below 20 °C."],
    [7, "options is 7; it must be an object of options."],
  ])("refuses %j in a sentence", (options, message) => {
    expect(refusalOf(() => learn(input, [], options as never)).message).toBe(message);
  });

  it("takes the first member of an ensemble, whose past all members share", () => {
    const members = [constantTemperature(24), constantTemperature(30)];
    const about = { kind: "ensemble", about: "invented", from: "2026-07-01" } as const;
    const ensemble = (of: typeof members) =>
      ({ ...input, temperatures: { ...about, groups: [{ weight: 1, members: of }] } }) as never;
    expect(learn(ensemble(members), logOf(1.05)).pace).toEqual(learn(input, logOf(1.05)).pace);
    const refusal = refusalOf(() => learn(ensemble([]), []));
    expect([refusal.code, refusal.path]).toEqual(["no-temperatures", ["temperatures"]]);
    expect(refusal.message).toBe("the ensemble has no members.");
  });

  it("goes on from no adult: what is seen last before it is where the forecast goes on from", () => {
    const adult = logEntry({ stage: "adult", on: "2026-06-29T12:00", notYet: "2026-06-29T00:00", count: 5 });
    const { used, from } = learn(input, [...logOf(1), adult]);
    expect(used.at(-1)?.stage).toBe("adult");
    expect(from?.stage).toBe("pupa");
  });

  it("says once that a log lies a year off, and where something was used each reason by itself", () => {
    const off = logOf(1).map((entry) => ({
      ...entry,
      on: entry.on.replace("2026", "2027"),
      notYet: undefined,
    }));
    const wrong = learn(input, off as never);
    expect(wrong.notes.map(({ message }) => message)).toEqual([
      "All 6 entries of the log lie about a year after the find (2026-06-01); check the year of the one and of the other.",
    ]);
    expect(wrong.aside).toHaveLength(6);
    const [first] = logOf(1);
    const mixed = learn(input, [...(first === undefined ? [] : [first]), ...(off.slice(1) as never[])]);
    expect(mixed.used).toHaveLength(1);
    expect(mixed.notes).toHaveLength(5);
  });

  it("refuses a last look that is not before the look that found the stage", () => {
    const refusal = refusalOf(() => logEntry({ stage: "pupa", on: "2026-06-20", notYet: "2026-06-21" }));
    expect([refusal.code, refusal.path]).toEqual(["invalid-log", ["notYet"]]);
  });
});

describe("a large brood", () => {
  const hatched = (hours: number, count: number): LogEntry => {
    const at = (hour: number): string => new Date(START + hour * 3_600_000).toISOString().slice(0, 16);
    return logEntry({ stage: "instar-1", on: at(hours), notYet: at(hours - 6), count });
  };
  const [egg] = danausPlexippus.stages;
  const need = egg?.degreeDays.value ?? Number.NaN;
  const sigma = Math.sqrt(Math.log(1 + (egg?.cv.value ?? Number.NaN) ** 2));
  const heat = (hours: number): number => ((24 - 11.5) * hours) / 24;

  it.each([1, 12, 80, 300, 1000])(
    "of %i animals is learned from as by a sum over a much finer grid",
    (count) => {
      const log = [hatched(84, count), hatched(96, 2 * count)];
      const belief = Math.sqrt(Math.log(1.01));
      const grid = Array.from({ length: 20_001 }, (_, i) => (i / 10_000 - 1) * 5 * belief);
      const logWeights = grid.map((x) => {
        const share = (hours: number): number => normalCdf((Math.log(heat(hours) / need) - x) / sigma);
        const seen = ([late, animals]: readonly [number, number]): number =>
          animals * Math.log(share(late) - share(late - 6));
        return -((x / belief) ** 2) / 2 + seen([84, count]) + seen([96, 2 * count]);
      });
      const top = Math.max(...logWeights);
      const weights = logWeights.map((one) => Math.exp(one - top));
      const total = weights.reduce((sum, one) => sum + one, 0);
      const mean = weights.reduce((sum, one, i) => sum + one * Math.exp(grid[i] ?? 0), 0) / total;
      const spread = Math.sqrt(
        weights.reduce((sum, one, i) => sum + one * (Math.exp(grid[i] ?? 0) - mean) ** 2, 0) / total,
      );
      const { pace, nodes } = learn(input, log);
      expect(nodes.reduce((sum, node) => sum + node.weight * node.pace, 0)).toBeCloseTo(mean, 5);
      // 10 and 90 % of a belief near to normal lie 1.2816 standard deviations from its middle.
      expect(Math.abs((pace.high - pace.low) / (2 * 1.2816 * spread) - 1)).toBeLessThan(0.04);
    },
  );

  it.each([1e4, 1e6, 2 ** 53 - 1])("of %i animals leaves one pace, and a forecast with a date", (count) => {
    const learned = learn(input, [hatched(90, count)]);
    // With one span seen, the middle of its logarithms is the likeliest.
    expect(learned.pace.middle).toBeCloseTo(Math.sqrt(heat(84) * heat(90)) / need, 3);
    expect(forecast({ ...input, learned }).stages.at(-1)?.begins.expected).not.toBeNull();
  });

  it("keeps aside what the belief before leaves no room for", () => {
    const huge = { ...input, found: { ...input.found, count: 1 } };
    const { used, aside } = learn(huge, [
      hatched(72, 2 ** 53 - 1),
      hatched(120, 2 ** 53 - 1),
      hatched(400, 2),
    ]);
    expect(used.length + aside.length).toBe(3);
    expect(used.length).toBeGreaterThan(0);
  });

  it("finds an offset too", () => {
    const { pace, offset, nodes } = learn(
      input,
      logOf(1, 6, 26).map((entry) => ({ ...entry, count: 500 })),
      {
        offsetDeviation: 2,
        paceVariation: 0.02,
      },
    );
    expect(nodes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
    expect(Math.abs(pace.middle - 1)).toBeLessThan(0.03);
    expect(offset?.middle).toBeGreaterThan(1.2);
    expect(offset?.middle).toBeLessThan(2.5);
  });
});

describe("animals that are still waited for", () => {
  const many = { ...input, found: { ...input.found, count: 12 } };
  const hatch = (hours: number, count: number): LogEntry => {
    const at = (hour: number): string => new Date(START + hour * 3_600_000).toISOString().slice(0, 16);
    return logEntry({ stage: "instar-1", on: at(hours), notYet: at(hours - 6), count });
  };
  // The middle egg needs 45 / 12.5 days: 86.4 hours.

  it("count against a fast pace while a stage is only partly logged", () => {
    const alone = learn(input, [hatch(78, 2)]).pace.middle;
    const waiting = learn(many, [hatch(78, 2)]).pace.middle;
    expect(alone).toBeLessThan(0.95);
    expect(waiting).toBeGreaterThan(alone + 0.03);
    const all = learn(many, [hatch(78, 2), hatch(84, 4), hatch(90, 4), hatch(96, 2)]).pace.middle;
    expect(Math.abs(all - 0.99)).toBeLessThan(0.05);
  });

  it("had not begun by the last look at which others had, not by the first", () => {
    const early = learn(many, [hatch(78, 2), hatch(84, 2)]).pace.middle;
    const late = learn(many, [hatch(78, 2), hatch(96, 2)]).pace.middle;
    // Eight that had not hatched after 96 hours are slower than eight that had not after 84.
    expect(late).toBeGreaterThan(early + 0.03);
  });

  it("keep the forecast in the stage before until half of them have begun the next", () => {
    expect(learn(many, [hatch(78, 5)]).from).toBeNull();
    expect(learn(many, [hatch(78, 6)]).from?.stage).toBe("instar-1");
    expect(learn(input, [hatch(78, 1)]).from?.stage).toBe("instar-1");
  });

  it("are not waited for when they died, or when a later stage shows that lines are missing", () => {
    const dead = logEntry({ stage: "egg", on: "2026-06-03", count: 10, fate: "died" });
    expect(learn(many, [hatch(78, 2), dead]).pace.middle).toBeCloseTo(
      learn(input, [hatch(78, 2)]).pace.middle,
      9,
    );
    const second = logEntry({
      stage: "instar-2",
      on: "2026-06-07T12:00",
      notYet: "2026-06-07T06:00",
      count: 12,
    });
    const [first] = learn(many, [hatch(78, 2), second]).used;
    expect(first?.stage).toBe("instar-1");
  });
});
