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
export { readLog } from "./log-csv.ts";
export { STAGE_WORDS } from "./stage-words.ts";
export { readLifeCycle } from "./life-cycle.ts";
export type { DateOrder } from "./day-column.ts";
export { type LogOptions, type ReadOptions, TEMPERATURE_FORMATS, type TemperatureFormat } from "./options.ts";
export type { ReadResult } from "./result.ts";
export { FATE_WORDS } from "./fate-words.ts";
