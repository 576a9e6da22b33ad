import {
  type HourlyWeather,
  type HourlyWeatherColumns,
  hourlyWeather,
} from "../../src/rearing/release/hourly-weather.ts";

const HOUR = 3_600_000;

/** Hours of warm, calm, dry and clear weather in a row, with single hours or whole columns changed. */
export function fairWeather(
  start: string,
  count: number,
  change: (i: number) => {
    readonly temperature?: number | null;
    readonly wind?: number | null;
    readonly rain?: number | null;
    readonly rainChance?: number | null;
    readonly cloud?: number | null;
  } = () => ({}),
): HourlyWeather {
  const first = Date.parse(start);
  const hours = Array.from({ length: count }, (_, i) => ({
    temperature: 24,
    wind: 2,
    rain: 0,
    rainChance: 5,
    cloud: 20,
    ...change(i),
  }));
  const columns: HourlyWeatherColumns = {
    at: hours.map((_, i) => first + i * HOUR),
    temperature: hours.map((one) => one.temperature),
    wind: hours.map((one) => one.wind),
    rain: hours.map((one) => one.rain),
    rainChance: hours.map((one) => one.rainChance),
    cloud: hours.map((one) => one.cloud),
  };
  return hourlyWeather(columns);
}

/** The same weather without some of its hours. */
export function withoutHours(weather: HourlyWeather, gone: readonly number[]): HourlyWeather {
  const left = <Value>(column: readonly Value[]): Value[] => column.filter((_, i) => !gone.includes(i));
  return {
    at: left(weather.at),
    temperature: left(weather.temperature),
    wind: left(weather.wind),
    rain: weather.rain && left(weather.rain),
    rainChance: weather.rainChance && left(weather.rainChance),
    cloud: weather.cloud && left(weather.cloud),
  };
}
