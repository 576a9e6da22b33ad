export { decodeText, LARGEST_TEXT_BYTES } from "./text.ts";
export { readTemperatures } from "./temperatures/temperatures.ts";
export { readDailyCsv } from "./temperatures/daily-csv.ts";
export { readReadingsCsv } from "./temperatures/readings-csv.ts";
export { readGhcnDly } from "./temperatures/ghcn-dly.ts";
export { readGhcnCsv } from "./temperatures/ghcn-csv.ts";
export {
  type DayRecord,
  type JsonSeries,
  type ReadingRecord,
  readTemperaturesJson,
} from "./temperatures/temperatures-json.ts";
export { FAULTY_PROBE_CELSIUS, POSSIBLE_CELSIUS, SENTINELS } from "./temperatures/temperature-cells.ts";
export { HEADER_SEARCH_ROWS } from "./table/csv-table.ts";
export { type LogReading, readLog } from "./log/log-csv.ts";
export { readTrials } from "./trials/trials-csv.ts";
export { STAGE_WORDS } from "./table/stage-words.ts";
export { readLifeCycle } from "./json/life-cycle.ts";
export type { DateOrder } from "./table/day-column.ts";
export {
  type CohortOptions,
  type LogOptions,
  type ReadOptions,
  TEMPERATURE_FORMATS,
  type TemperatureFormat,
  type TrialOptions,
} from "./options.ts";
export type { ReadResult } from "./result.ts";
export { FATE_WORDS } from "./log/fate-words.ts";
export { readHourlyWeather } from "./weather/hourly-weather.ts";
export type { HourlyRead } from "./weather/hourly-read.ts";
export type { HourlyOptions } from "./weather/hourly-options.ts";
export type { HourRecord } from "./weather/hourly-weather-json.ts";
export type { SupersededRow } from "./log/log-corrections.ts";
export { readLogEntries } from "./log/log-entries.ts";
export { readForecast } from "./json/forecast.ts";
export { readCohorts } from "./cohorts/cohorts.ts";
export type { CohortRecord } from "./cohorts/cohort-record.ts";
