import type { Note } from "../../notes.ts";
import type { HourlyWeather } from "../../rearing/release/hourly-weather.ts";
import type { WindUnit } from "../../rearing/release/wind-unit.ts";
import type { TemperatureUnit } from "../../units.ts";

/** What a file of hourly weather was read into. */
export interface HourlyRead {
  /** In °C, m/s, mm and %. */
  readonly weather: HourlyWeather;
  /** Units of the file, for showing the weather as its owner knows it. */
  readonly units: { readonly temperature: TemperatureUnit; readonly wind: WindUnit };
  /** What was deduced, dropped, moved or converted on the way; empty when nothing was. */
  readonly notes: readonly Note[];
}
