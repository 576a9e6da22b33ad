import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../src/errors.ts";
import { CALLS, type Call, EXPORTED, NOT_CALLED, UNCHECKED, isMade } from "./calls.ts";
import { FIGURE_CALLS } from "./figure-calls.ts";
import { holesIn } from "./holes.ts";
import { STRANGE, sameKind } from "./hostile-values.ts";
import { type Path, placesIn, valueAt, withValue } from "./mutated.ts";

/** Each takes a tenth of a second or more: a season, a log learned from, a plan of days. */
const SLOW: readonly string[] = [
  "hindcast",
  "learn",
  "startFor",
  "season",
  "dayPlan",
  "forecast",
  "chanceBetween",
];

/** Functions whose result is NaN where they are given NaN, the mark of a missing reading. */
const KEEP_MISSING: readonly string[] = [
  "celsiusDegreesToFahrenheit",
  "celsiusToFahrenheit",
  "dailyTemperatures",
  "fahrenheitDegreesToCelsius",
  "fahrenheitToCelsius",
  "fillGaps",
  "metresPerSecond",
  "readDailyCsv",
  "readGhcnCsv",
  "readGhcnDly",
  "readTemperatures",
  "readTemperaturesJson",
  "windIn",
];

/** Entry points that show what the library made. */
const SHOWS: readonly string[] = ["write", "plot"];

/** Numbers at which sums, shares and counts go wrong. */
const EXTREMES = [0, 1, 1e6, Number.MAX_SAFE_INTEGER, -1, 0.5, 1e-9, 1e100];

/** Plain values of another kind that are right in a place, or change nothing there. */
const FITTING: Readonly<Record<string, readonly string[]>> = {
  // Where the value stood, for a message.
  dayNumber: ["1 null", "1 7", "1 text"],
  // Arithmetic: nothing stays nothing.
  metresPerSecond: ["0 null", "0 undefined", "0 text"],
  windIn: ["0 null", "0 undefined", "0 text"],
  // May be left out without a default.
  degreeDayRowsSql: ["2 undefined"],
  heatLimit: ["1 undefined"],
  readingsCheckSql: ["1 undefined"],
  reachedSql: ["2 undefined"],
  startText: ["1 undefined"],
  // A clock on the wall needs no zone.
  loggerDays: ["1 null", "1 undefined"],
  // A text that is one already.
  decodeText: ["0 text"],
};

/** Arithmetic on one number, which looks at nothing. */
const ARITHMETIC = /^(celsius|fahrenheit)/;

const runs = (name: string, usual: number): fc.Parameters<unknown> => ({
  numRuns: Math.ceil((usual * Number(process.env["FC_RUNS"] ?? 100)) / (SLOW.includes(name) ? 1000 : 100)),
  endOnFailure: true,
});

/** Runs a call; the only outcomes are a result and a refusal in a full sentence. */
function outcome(call: Call, args: readonly unknown[]): unknown {
  try {
    return call.run(...args);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.message.length).toBeGreaterThan(11);
    expect(error.message.length).toBeLessThan(1500);
    return error;
  }
}

const shownArgs = (put: unknown): string =>
  typeof put === "string"
    ? JSON.stringify(put.slice(0, 80))
    : typeof put === "symbol"
      ? "a symbol"
      : fc.stringify(put).slice(0, 200);

describe("public functions", () => {
  it("are all here", () => {
    const here = new Set(CALLS.map(({ entry, name }) => `${entry} ${name}`));
    const missing = EXPORTED.filter((one) => !here.has(one));
    expect(missing.map((one) => one.split(" ")[1]).sort()).toEqual([...NOT_CALLED, ...UNCHECKED].sort());
    expect(CALLS.length).toBeGreaterThan(130);
  });

  it.each(CALLS)("$entry $name: takes the right arguments", (call) => {
    const result = call.run(...call.args());
    if (!KEEP_MISSING.includes(call.name)) expect(holesIn(result).slice(0, 3)).toEqual([]);
  });

  const places = CALLS.flatMap((call) => {
    const paths = placesIn(call.args(), (value) => isMade(call, value));
    return paths.length === 0 ? [] : [{ ...call, paths }];
  });

  it.each(places)("$entry $name: hostile values of the right kind", (call) => {
    const hostile = fc
      .constantFrom(...call.paths)
      .chain((path) => fc.record({ path: fc.constant(path), put: sameKind(valueAt(call.args(), path)) }));
    fc.assert(
      fc.property(hostile, ({ path, put }) => {
        const result = outcome(call, withValue(call.args(), path, put) as unknown[]);
        // A text that says NaN is told apart from a number that is none.
        if (result instanceof InputError || KEEP_MISSING.includes(call.name) || typeof put === "string")
          return;
        expect(holesIn(result).slice(0, 1), `${path.join(".")} as ${shownArgs(put)}`).toEqual([]);
      }),
      runs(call.name, 3),
    );
  });

  // A hindcast from every day of four years takes seconds.
  it.each(places.filter(({ name }) => name !== "hindcast"))(
    "$entry $name: each number as nothing, one, a million and more",
    (call) => {
      const numbers = call.paths.filter((path) => typeof valueAt(call.args(), path) === "number");
      for (const path of numbers) {
        for (const put of EXTREMES) {
          const result = outcome(call, withValue(call.args(), path, put) as unknown[]);
          if (result instanceof InputError || KEEP_MISSING.includes(call.name)) continue;
          expect(holesIn(result).slice(0, 1), `${path.join(".")} as ${put}`).toEqual([]);
        }
      }
    },
  );

  it.each(places.filter(({ name }) => !ARITHMETIC.test(name)))(
    "$entry $name: values of another kind",
    (call) => {
      // Arguments and their fields; below those, and in the place of an entry of a list, nothing at all is tried, and
      // what the library made is trusted.
      const shallow = call.paths.filter((path) => path.length <= (SHOWS.includes(call.entry) ? 1 : 2));
      const kinds = (path: Path): readonly unknown[] => {
        const isEntry = typeof path.at(-1) === "number" && path.length > 1;
        return isEntry ? [null, undefined] : STRANGE;
      };
      const another = fc
        .constantFrom(...shallow)
        .chain((path) => fc.tuple(fc.constant(path), fc.constantFrom(...kinds(path))));
      fc.assert(
        fc.property(another, ([path, put]) => {
          outcome(call, withValue(call.args(), path, put) as unknown[]);
        }),
        runs(call.name, 3),
      );
      expect(Reflect.has({}, "polluted")).toBe(false);
    },
  );

  it("have all their figures here too", () => {
    expect(FIGURE_CALLS.map(({ name }) => name).sort()).toEqual([...NOT_CALLED].sort());
  });

  it.each(FIGURE_CALLS)("$entry $name: draws", (call) => {
    expect(call.run(...call.args())).toBeTruthy();
  });

  // A text or a number where one belongs is of the right kind: the laws above try those.
  it.each([...CALLS, ...FIGURE_CALLS].filter(({ name }) => name !== "InputError" && !ARITHMETIC.test(name)))(
    "$entry $name: a plain value in the place of an argument",
    (call) => {
      const args = call.args();
      const taken = args.flatMap((arg, i) =>
        [null, undefined, 7, "text"].flatMap((put) => {
          const fits = typeof put === typeof arg && put !== null;
          const isLeftOut = put === undefined && i >= call.needed;
          if (fits || isLeftOut) return [];
          return outcome(call, withValue(args, [i], put) as unknown[]) instanceof InputError
            ? []
            : [`${i} ${String(put)}`];
        }),
      );
      expect(taken).toEqual(FITTING[call.name] ?? []);
    },
  );

  // Figures, tables and texts trust what the library made; a caller makes errors of any shape.
  it.each(
    CALLS.filter(
      ({ name, entry }) => !ARITHMETIC.test(name) && !SHOWS.includes(entry) && name !== "InputError",
    ),
  )("$entry $name: nothing in the place of an argument or of a property of one", (call) => {
    const args = call.args();
    for (const [i, arg] of args.entries()) {
      for (const put of [undefined, null, {}]) outcome(call, withValue(args, [i], put) as unknown[]);
      const plain = typeof arg === "object" && arg !== null && !Array.isArray(arg);
      if (!plain) continue;
      for (const key of Object.keys(arg)) {
        for (const put of [undefined, null]) outcome(call, withValue(args, [i, key], put) as unknown[]);
        const without: unknown = Object.fromEntries(Object.entries(arg).filter(([name]) => name !== key));
        outcome(call, withValue(args, [i], without) as unknown[]);
      }
    }
    outcome(call, []);
  });
});
