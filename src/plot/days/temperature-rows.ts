import { InputError } from "../../errors.ts";
import { greatest, least } from "../../numeric/extremes.ts";
import { given } from "../../given.ts";
import { knownSeries } from "../../temperature/known-series.ts";
import type {
  ConstantTemperature,
  DailyTemperatures,
  Origin,
  TemperatureReadings,
  TemperatureSeries,
} from "../../temperature/series.ts";
import { type CivilDay, civilDay, dayNumber } from "../../time/civil-day.ts";
import { DAY_MS, type Zone, civilDayOf } from "../../time/zone.ts";
import type { Celsius } from "../../units.ts";

/** One civil day of temperatures, as a figure, a CSV file or a test takes it. */
export interface TemperatureRow {
  readonly day: CivilDay;
  /** Lowest temperature of the day, °C; `null` where there is no reading. */
  readonly min: Celsius | null;
  /** Highest temperature of the day, °C; `null` where there is no reading. */
  readonly max: Celsius | null;
  /** Where the day comes from; `null` where there is no reading. */
  readonly origin: Origin | null;
}

/** Which days to take. */
export interface DayRange {
  /** First day. Default: the first that the temperatures have. */
  readonly from?: CivilDay;
  /** Last day. Default: the last that the temperatures have. */
  readonly to?: CivilDay;
  /** IANA zone; needed for readings on a UTC clock. */
  readonly zone?: Zone;
}

interface Extremes {
  readonly min: Celsius;
  readonly max: Celsius;
  readonly origin: Origin;
}
/** The days of one part of a series: their range of day numbers, and the extremes of each. */
interface Part {
  readonly first: number;
  readonly last: number;
  readonly on: (day: number) => Extremes | undefined;
}

/**
 * Temperatures day by day. Of joined series each day shows the first part that has readings for it; of
 * logger readings it shows the lowest and the highest reading of the day.
 * @param series Any temperatures that a forecast can run on.
 * @param range Days to take, and the zone of readings on a UTC clock.
 * @returns One row for each civil day of the range, days without readings included.
 * @throws {InputError} `zone-needed`, `invalid-day`, or `invalid-option` when a temperature that is held for
 *   ever has no `from` and `to`.
 */
export function temperatureRows(series: TemperatureSeries, range: DayRange = {}): TemperatureRow[] {
  knownSeries(series, ["series"]);
  given(range, ["range"], "an object of options");
  const parts = (series.kind === "joined" ? series.parts : [series]).map((part) =>
    partOf(part, range.zone ?? null),
  );
  const first =
    range.from === undefined ? least(parts.map((part) => part.first)) : dayNumber(range.from, ["from"]);
  const last =
    range.to === undefined ? greatest(parts.map((part) => part.last)) : dayNumber(range.to, ["to"]);
  if (!Number.isFinite(first) || !Number.isFinite(last)) {
    throw new InputError(
      "invalid-option",
      "a temperature that is held for ever has no first or last day; name from and to.",
      {
        path: [Number.isFinite(first) ? "to" : "from"],
      },
    );
  }
  const rows: TemperatureRow[] = [];
  for (let day = first; day <= last; day++) {
    let found: Extremes | undefined;
    for (const part of parts) found ??= part.on(day);
    rows.push({ day: civilDay(day), ...(found ?? { min: null, max: null, origin: null }) });
  }
  return rows;
}

function partOf(part: DailyTemperatures | TemperatureReadings | ConstantTemperature, zone: Zone): Part {
  if (part.kind === "daily") return dailyPart(part);
  return part.kind === "readings" ? readingsPart(part, zone) : constantPart(part);
}

function dailyPart({ start, min, max, origin }: DailyTemperatures): Part {
  const first = dayNumber(start);
  return {
    first,
    last: first + min.length - 1,
    on: (day) => {
      const [low = Number.NaN, high = Number.NaN] = [min[day - first], max[day - first]];
      return low <= high ? { min: low, max: high, origin: origin[day - first] ?? "observed" } : undefined;
    },
  };
}

function readingsPart({ at, temperature, clock, origin }: TemperatureReadings, zone: Zone): Part {
  if (clock === "utc" && zone === null) {
    throw new InputError(
      "zone-needed",
      "the readings are on a UTC clock; name the zone whose days to show.",
      {
        path: ["zone"],
      },
    );
  }
  const days = new Map<number, Extremes>();
  temperature.forEach((value, i) => {
    const time = at[i] ?? Number.NaN;
    const day = clock === "utc" ? dayNumber(civilDayOf(time, zone)) : Math.floor(time / DAY_MS);
    const { min, max } = days.get(day) ?? { min: value, max: value };
    days.set(day, { min: Math.min(min, value), max: Math.max(max, value), origin });
  });
  const numbers = [...days.keys()];
  return { first: least(numbers), last: greatest(numbers), on: (day) => days.get(day) };
}

function constantPart({ temperature, from, to }: ConstantTemperature): Part {
  const first = from === null ? -Infinity : dayNumber(from);
  const last = to === null ? Infinity : dayNumber(to);
  const held: Extremes = { min: temperature, max: temperature, origin: "assumed" };
  return { first, last, on: (day) => (day >= first && day <= last ? held : undefined) };
}
