export { decodeText, LARGEST_TEXT_BYTES } from "./text.ts";
export { readTemperatures } from "./temperatures.ts";
export { readDailyCsv } from "./daily-csv.ts";
export { readReadingsCsv } from "./readings-csv.ts";
export { readGhcnDly } from "./ghcn-dly.ts";
export { readGhcnCsv } from "./ghcn-csv.ts";
export {
  type DayRecord,
  type JsonSeries,
  type ReadingRecord,
  readTemperaturesJson,
} from "./temperatures-json.ts";
export { FAULTY_PROBE_CELSIUS, POSSIBLE_CELSIUS, SENTINELS } from "./temperature-cells.ts";
export { HEADER_SEARCH_ROWS } from "./csv-table.ts";
export { type LogReading, readLog } from "./log-csv.ts";
export { readTrials } from "./trials-csv.ts";
export { STAGE_WORDS } from "./stage-words.ts";
export { readLifeCycle } from "./life-cycle.ts";
export type { DateOrder } from "./day-column.ts";
export {
  type CohortOptions,
  type LogOptions,
  type ReadOptions,
  TEMPERATURE_FORMATS,
  type TemperatureFormat,
  type TrialOptions,
} from "./options.ts";
export type { ReadResult } from "./result.ts";
export { FATE_WORDS } from "./fate-words.ts";
export { readHourlyWeather } from "./hourly-weather.ts";
export type { HourlyRead } from "./hourly-read.ts";
export type { HourlyOptions } from "./hourly-options.ts";
export type { HourRecord } from "./hourly-weather-json.ts";
export type { SupersededRow } from "./log-corrections.ts";
export { readLogEntries } from "./log-entries.ts";
export { readForecast } from "./forecast.ts";
export { readCohorts } from "./cohorts.ts";
export type { CohortRecord } from "./cohort-record.ts";
