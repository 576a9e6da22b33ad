import { InputError, finite } from "../errors.ts";
import { given, givenColumn } from "../given.ts";
import type { Instant } from "../time/zone.ts";
import type { Origin, TemperatureReadings } from "./series.ts";

/**
 * Longest time between two readings that are still joined by a straight line unless told otherwise,
 * hours. Common practice, no source: loggers write every few minutes to hours, and over a quarter of a
 * day a straight line can miss the day's maximum.
 */
export const LONGEST_GAP_HOURS = 6;

/**
 * Logger readings as a series. Between two readings the temperature runs along a straight line.
 * @param at Time of each reading in milliseconds, strictly increasing (see `clock`).
 * @param temperature Temperature of each reading, °C.
 * @param options.clock `utc` (default): times count from 1970-01-01T00:00Z. `local`: times are readings of
 *   a clock on the wall, counted as if that clock showed UTC.
 * @param options.longestGapHours Readings further apart are not joined. Default 6.
 * @param options.origin Default `observed`.
 * @throws {InputError} `length-mismatch`, `too-few-readings` (fewer than two), `invalid-number`,
 *   `conflicting-readings` (times that do not increase), `invalid-option`.
 */
export function temperatureReadings(
  at: ArrayLike<Instant>,
  temperature: ArrayLike<number>,
  options: { clock?: "utc" | "local"; longestGapHours?: number; origin?: Origin } = {},
): TemperatureReadings {
  given(options, ["options"], "an object of options");
  const { clock = "utc", longestGapHours = LONGEST_GAP_HOURS, origin = "observed" } = options;
  givenColumn(at, ["at"]);
  givenColumn(temperature, ["temperature"]);
  if (at.length !== temperature.length) {
    throw new InputError(
      "length-mismatch",
      `there are ${at.length} times and ${temperature.length} temperatures; each reading needs one of each.`,
      {
        path: ["temperature"],
        value: temperature.length,
      },
    );
  }
  if (at.length < 2) {
    throw new InputError(
      "too-few-readings",
      `there ${at.length === 1 ? "is one reading" : "are no readings"}; a temperature over time needs at least two.`,
      { path: ["at"], value: at.length },
    );
  }
  if (!(longestGapHours > 0)) {
    throw new InputError("invalid-option", `longestGapHours is ${longestGapHours}; it must be above 0.`, {
      path: ["longestGapHours"],
      value: longestGapHours,
    });
  }
  const times = Float64Array.from(at);
  const degrees = Float64Array.from(temperature);
  for (let i = 0; i < times.length; i++) {
    const time = finite(times[i], ["at", i], "a time in milliseconds");
    finite(degrees[i], ["temperature", i], "a temperature in °C (leave out readings that are missing)");
    if (i > 0 && !(time > (times[i - 1] ?? 0))) {
      throw new InputError(
        "conflicting-readings",
        `at.${i} is not after the reading before it; times must increase.`,
        {
          path: ["at", i],
          value: time,
        },
      );
    }
  }
  return { kind: "readings", at: times, temperature: degrees, clock, longestGapHours, origin };
}
