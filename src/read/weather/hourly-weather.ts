import { type HourlyOptions, checkedHourlyOptions } from "./hourly-options.ts";
import type { HourlyRead } from "./hourly-read.ts";
import { hourlyFromCsv } from "./hourly-weather-csv.ts";
import { hourlyFromJson } from "./hourly-weather-json.ts";
import { plainText } from "../text.ts";

/**
 * Hourly weather from a delimited table or from JSON.
 *
 * A table has a header with a column of times (or of days and times), one of temperatures in °C or °F, one of wind
 * in m/s, km/h, mph or kn, one of rain in mm or inches or of its chance in %, or both, and where wanted one of
 * cloud in % or oktas. JSON is `{ "unit": "C", "windUnit": "m/s", "hours": [{ "at", "temperature", "wind", "rain",
 * "rainChance", "cloud" }] }`, or the bare list, with rain in mm and the other two in %.
 *
 * Units are never guessed: a header, a field or an option names them. Each time is the begin of its hour. Times
 * without an offset need a zone.
 * @param text Text, or the bytes of the file.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-unit`,
 *   `conflicting-units`, `implausible-weather`, `implausible-temperature`, `invalid-weather`, `zone-needed`,
 *   `unknown-column` and the others of the readers of temperatures.
 * @example
 * readHourlyWeather("time,temp °F,wind mph,rain %\n2026-07-05T12:00-04:00,77,5,10").weather.temperature // → [25]
 */
export function readHourlyWeather(text: string | Uint8Array, options: HourlyOptions = {}): HourlyRead {
  const checked = checkedHourlyOptions(options);
  const { text: plain, notes } = plainText(text);
  const read = /^\s*[{[]/.test(plain) ? hourlyFromJson(plain, checked) : hourlyFromCsv(plain, checked);
  return { ...read, notes: [...notes, ...read.notes] };
}
