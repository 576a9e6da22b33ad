import { type Column, chooser } from "../table/columns.ts";
import { type ColumnRole, headerMeaning } from "../table/header-words.ts";
import type { HourlyOptions } from "./hourly-options.ts";
import { rainUnitOf } from "./weather-units.ts";

/** Columns of a table of hourly weather. */
export interface WeatherColumns {
  readonly stamp: Column;
  /** Column of the time of day where `stamp` holds only the day. */
  readonly time: Column | null;
  readonly temperature: Column;
  readonly wind: Column;
  readonly rain: Column | null;
  readonly chance: Column | null;
  readonly cloud: Column | null;
}

type WeatherRole = Extract<ColumnRole, "date" | "time" | "stamp" | "temperature"> | WeatherThing;
type WeatherThing = "wind" | "rain" | "chance" | "cloud";

/** Words of a header that say how something was taken, and of units; they do not say what it is. */
const OTHER_WORDS = new Set(
  "speed mean average avg sustained 10m 2m hourly h hr hour km kmh kph kn kt kts knot knots m s sec mph mi miles per mps metres meters second mm millimetres millimeters in inch inches percent pct of the for a amount sum total okta oktas octas eighths expected forecast surface".split(
    " ",
  ),
);

const THINGS: readonly (readonly [thing: WeatherThing, words: readonly string[]])[] = [
  ["wind", ["wind", "windspeed", "wind10m"]],
  ["rain", ["rain", "rainfall", "precipitation", "precip"]],
  ["chance", ["rain chance", "chance rain", "rain probability", "probability rain", "rain risk", "pop"]],
  ["chance", ["precipitation chance", "chance precipitation", "precip chance", "chance precip"]],
  ["chance", ["precipitation probability", "probability precipitation", "precip probability", "precip prob"]],
  ["cloud", ["cloud", "clouds", "cloudiness", "cloud cover", "cloudcover", "cloud coverage", "sky cover"]],
];

/**
 * Columns for a time, a temperature, the wind and rain, or `null` where a header lacks one.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function weatherColumns(
  header: readonly string[],
  many: "first" | "refuse",
  named: NonNullable<HourlyOptions["columns"]> = {},
): WeatherColumns | null {
  const columns = header.map((text, index): Column => ({ index, header: headerMeaning(text) }));
  const choose = chooser<WeatherRole>(columns, named, many, roleOf);
  const stamp = choose("time", "stamp");
  const date = choose("date", "date");
  const time = choose("time", "time");
  const temperature = choose("temperature", "temperature");
  const wind = choose("wind", "wind");
  const [rain, chance] = [choose("rain", "rain"), choose("chance", "chance")];
  // A column of stamps says all; `time` alone often holds them.
  const first = stamp ?? date ?? time;
  if (!first || !temperature || !wind || (!rain && !chance)) return null;
  const own = stamp === null && date !== null ? time : null;
  return { stamp: first, time: own, temperature, wind, rain, chance, cloud: choose("cloud", "cloud") };
}

function roleOf({ header }: Column): WeatherRole | null {
  switch (header.role) {
    case "date":
    case "time":
    case "stamp":
    case "temperature":
      return header.role;
    default: {
      const thing = thingOf(header.text);
      // Rain in percent can only be its chance.
      return thing === "rain" && rainUnitOf(header.text) === "%" ? "chance" : thing;
    }
  }
}

/** What a header names besides times and temperatures; a gust, a direction or wind chill is none of them. */
function thingOf(header: string): WeatherThing | null {
  const words = header
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "" && !OTHER_WORDS.has(word))
    .join(" ");
  return THINGS.find(([, names]) => names.includes(words))?.[0] ?? null;
}
