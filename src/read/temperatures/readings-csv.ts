import type { TemperatureReadings } from "../../temperature/series.ts";
import { DAY_MS } from "../../time/zone.ts";
import { assembleReadings } from "./assemble-readings.ts";
import { type ReadingsColumns, columnNotes, readingsColumns } from "../table/columns.ts";
import { type CsvTable, csvTable } from "../table/csv-table.ts";
import { temperatureOf } from "./daily-csv.ts";
import { type CheckedReadOptions, type ReadOptions, checkedReadOptions } from "../options.ts";
import { neededCells } from "../table/needed-cells.ts";
import { ROWS } from "../place.ts";
import type { ReadResult } from "../result.ts";
import { stampColumn } from "../table/stamp-column.ts";
import { fileUnit, headerUnit, temperatureCells } from "./temperature-cells.ts";
import { plainText } from "../text.ts";

/**
 * Logger readings from a delimited table with a header: one column of stamps, or one of days and one of
 * times, and one of temperatures. Title lines before the header are skipped.
 *
 * Stamps with an offset, a header with one (`Date Time, GMT-04:00`) or `zone` put the readings on the
 * time axis of UTC; without any of them they stay on a local clock. The offset in the header counts
 * before `zone`.
 * @param text Text, or the bytes of the file.
 * @returns The series in °C, with notes.
 * @throws {InputError} as {@link readDailyCsv}, and `invalid-instant`, `skipped-local-time` (a local time
 *   that clocks skipped), `zone-needed`, `too-few-readings`.
 * @example
 * readReadingsCsv("time,temp C\n2026-05-01 06:00,14\n2026-05-01 07:00,16").series.clock // → "local"
 */
export function readReadingsCsv(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<TemperatureReadings> {
  const checked = checkedReadOptions(options);
  const { text: plain, notes } = plainText(text);
  const table = csvTable(plain, (header, many) => readingsColumns(header, many, checked.columns), {
    needed: "a time and a temperature",
    example: "time,temperature °C",
    named: checked.columns,
  });
  const result = readingsFromTable(table, checked);
  return { ...result, notes: [...notes, ...result.notes] };
}

/** {@link readReadingsCsv} from a table whose columns are known. */
export function readingsFromTable(
  table: CsvTable<ReadingsColumns>,
  options: CheckedReadOptions,
): ReadResult<TemperatureReadings> {
  const { stamp, time, temperature } = table.columns;
  const needed = neededCells(table, time ? [stamp, temperature, time] : [stamp, temperature], {
    location: options.location,
    noRows: "no-temperatures",
  });
  const { rows } = needed;
  const [stampTexts = [], temperatureTexts = [], timeTexts] = needed.texts;
  const stamps = stampColumn(
    { texts: stampTexts, column: stamp.header.text },
    time && timeTexts ? { texts: timeTexts, column: time.header.text } : null,
    rows,
    options.dateOrder,
    ROWS,
  );
  const column = temperature.header.text;
  const cells = temperatureCells(fileUnit([headerUnit(temperature.header)], options.unit), ROWS, {
    probeFaults: true,
    sentinels: options.sentinels,
  });
  const celsius = Float64Array.from(temperatureTexts, (text, i) =>
    cells.celsius(temperatureOf(text, rows[i] ?? 0, column), rows[i] ?? 0, column),
  );
  const local = stamps.days.map((day, i) => day * DAY_MS + (stamps.ms[i] ?? 0));
  const assembled = assembleReadings(
    { local, offset: stamps.offset, temperature: celsius, entries: rows },
    ROWS,
    {
      zone: options.zone,
      headerOffset: time?.header.offset ?? stamp.header.offset,
      longestGapHours: options.longestGapHours,
      field: stamp.header.text,
    },
  );
  return {
    series: assembled.series,
    format: "readings-csv",
    notes: [
      ...table.notes,
      ...columnNotes(table.header, time ? { date: stamp, time, temperature } : { time: stamp, temperature }),
      ...needed.notes,
      ...stamps.notes,
      ...cells.notes(),
      ...assembled.notes,
    ],
  };
}
