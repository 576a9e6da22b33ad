import { InputError, type InputPath, finite, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import { HOUR_MS, type Instant } from "../../time/zone.ts";

/** Hours of weather, in order of time. `null` is a value that is missing, and means only that. */
export interface HourlyWeather {
  /** When each hour begins, milliseconds since 1970-01-01T00:00Z; at least an hour apart. */
  readonly at: readonly Instant[];
  /** Air temperature in the shade, °C. */
  readonly temperature: readonly (number | null)[];
  /** Wind, m/s. */
  readonly wind: readonly (number | null)[];
  /** Rain within the hour, mm; `null` instead of a column where the source gives none. */
  readonly rain: readonly (number | null)[] | null;
  /** Chance of rain within the hour, %; `null` instead of a column where the source gives none. */
  readonly rainChance: readonly (number | null)[] | null;
  /** Share of the sky under cloud, %; `null` instead of a column where the source gives none. */
  readonly cloud: readonly (number | null)[] | null;
}

/** Columns for {@link hourlyWeather}: rain as an amount, as a chance or as both; cloud where it is known. */
export interface HourlyWeatherColumns {
  readonly at: ArrayLike<Instant>;
  readonly temperature: ArrayLike<number | null>;
  readonly wind: ArrayLike<number | null>;
  readonly rain?: ArrayLike<number | null> | null;
  readonly rainChance?: ArrayLike<number | null> | null;
  readonly cloud?: ArrayLike<number | null> | null;
}

/** A quantity of the weather that has a column. */
export type WeatherField = Exclude<keyof HourlyWeather, "at">;

/**
 * What a value of the weather can be. Common practice, no source: just beyond what inhabited places have, so
 * that only faults and wrong units fall outside. The strongest hurricanes blow at about 80 m/s.
 */
export const POSSIBLE_WEATHER: Readonly<
  Record<WeatherField, { readonly low: number; readonly high: number; readonly unit: string }>
> = {
  temperature: { low: -60, high: 60, unit: "°C" },
  wind: { low: 0, high: 90, unit: "m/s" },
  rain: { low: 0, high: 400, unit: "mm" },
  rainChance: { low: 0, high: 100, unit: "%" },
  cloud: { low: 0, high: 100, unit: "%" },
};

/**
 * Hours of weather from columns of equal length.
 *
 * Each entry stands for the hour that begins at its time. Where the next entry begins later than an hour
 * after, the time between is a gap: nothing is known of it, and it is not filled.
 * @param columns.at When each hour begins, milliseconds since 1970-01-01T00:00Z, increasing.
 * @returns Plain data; NaN has become `null`.
 * @throws {InputError} `length-mismatch`; `too-few-readings` (no hour at all); `invalid-number`;
 *   `implausible-weather` (outside `POSSIBLE_WEATHER`); `conflicting-readings` (times that do not
 *   increase); `invalid-weather` (entries less than an hour apart, no two of them an hour apart, or no column
 *   of rain).
 * @example
 * hourlyWeather({ at: [0, 3_600_000], temperature: [18, 19], wind: [2, 2], rainChance: [0, NaN] }).rainChance // → [0, null]
 */
export function hourlyWeather(columns: HourlyWeatherColumns): HourlyWeather {
  given(columns, ["columns"], "an object of columns", "at", "temperature", "wind");
  const { at, temperature, wind, rain = null, rainChance = null, cloud = null } = columns;
  if (rain === null && rainChance === null) {
    throw invalid(
      ["rain"],
      null,
      "the weather has no column of rain; give rain in mm, its chance in %, or both.",
    );
  }
  if (at.length === 0) {
    throw new InputError("too-few-readings", "there is no hour of weather; at least one is needed.", {
      path: ["at"],
      value: 0,
    });
  }
  return {
    at: checkedTimes(at),
    temperature: checkedColumn("temperature", temperature, at.length),
    wind: checkedColumn("wind", wind, at.length),
    rain: rain === null ? null : checkedColumn("rain", rain, at.length),
    rainChance: rainChance === null ? null : checkedColumn("rainChance", rainChance, at.length),
    cloud: cloud === null ? null : checkedColumn("cloud", cloud, at.length),
  };
}

function checkedTimes(at: ArrayLike<Instant>): Instant[] {
  let shortest = Infinity;
  const times = Array.from(at, (time, i) => finite(time, ["at", i], "a time in milliseconds"));
  times.forEach((time, i) => {
    const before = times[i - 1];
    if (before === undefined) return;
    if (!(time > before)) {
      throw new InputError(
        "conflicting-readings",
        `at.${i} is not after the hour before it; times must increase.`,
        { path: ["at", i], value: time },
      );
    }
    if (time - before < HOUR_MS) {
      const minutes = Math.round((time - before) / 60_000);
      throw invalid(
        ["at", i],
        time,
        `at.${i} is ${minutes} minutes after the hour before it; each entry stands for an hour, so give one an hour.`,
      );
    }
    shortest = Math.min(shortest, time - before);
  });
  if (shortest > HOUR_MS && shortest < Infinity) {
    const hours = Number((shortest / HOUR_MS).toFixed(2));
    throw invalid(
      ["at", 1],
      times[1],
      `the entries are ${hours} hours apart or more; each stands for one hour, so weather by the hour is needed.`,
    );
  }
  return times;
}

function checkedColumn(
  field: WeatherField,
  values: ArrayLike<number | null>,
  length: number,
): (number | null)[] {
  if (values.length !== length) {
    throw new InputError(
      "length-mismatch",
      `there are ${length} times and ${values.length} values of ${field}; each hour needs one of each.`,
      { path: [field], value: values.length },
    );
  }
  const { low, high, unit } = POSSIBLE_WEATHER[field];
  return Array.from(values, (value, i) => {
    if (value === null || Number.isNaN(value)) return null;
    finite(value, [field, i], `a number in ${unit}, or null where it is missing`);
    if (value >= low && value <= high) return value;
    throw new InputError(
      "implausible-weather",
      `${field}.${i} is ${shown(value)}; it must be from ${low} to ${high} ${unit}, or null where it is missing.`,
      { path: [field, i], value },
    );
  });
}

function invalid(path: InputPath, value: unknown, message: string): InputError {
  return new InputError("invalid-weather", message, { path, value });
}
