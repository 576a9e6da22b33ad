import { InputError, shown } from "../../errors.ts";
import type { WeatherField } from "../../rearing/release/hourly-weather.ts";
import { assembleHours } from "./assemble-hours.ts";
import { type Column, columnNotes } from "../table/columns.ts";
import { csvTable, refuseUnmetNames } from "../table/csv-table.ts";
import { temperatureOf } from "../temperatures/daily-csv.ts";
import type { HourlyOptions } from "./hourly-options.ts";
import type { HourlyRead } from "./hourly-read.ts";
import { neededCells } from "../table/needed-cells.ts";
import { ROWS } from "../place.ts";
import { stampColumn } from "../table/stamp-column.ts";
import { fileUnit, headerUnit, temperatureCells } from "../temperatures/temperature-cells.ts";
import {
  type Scale,
  type ValuesRead,
  chanceScale,
  cloudScale,
  rainScale,
  weatherValues,
  windScale,
} from "./weather-cells.ts";
import { weatherColumns } from "./weather-columns.ts";

/** Hourly weather from a delimited table with a header; the text is decoded and the options are checked. */
export function hourlyFromCsv(plain: string, options: HourlyOptions): HourlyRead {
  const table = csvTable(plain, (header, many) => weatherColumns(header, many, options.columns), {
    needed: "a time, a temperature, the wind, and rain or its chance",
    example: "time,temp °C,wind m/s,rain mm",
    named: options.columns,
  });
  refuseUnmetNames(table, options.columns);
  const { stamp, time, temperature, wind, rain, chance, cloud } = table.columns;
  // Units are settled before any cell is looked at: a wrong unit makes every cell look wrong.
  const unit = statedUnit(temperature, options);
  const winds = windScale(wind.header.text, options.windUnit);
  const scales = {
    rain: rain && rainScale(rain.header.text),
    chance: chance && chanceScale(chance.header.text),
  };
  const clouds = cloud && cloudScale(cloud.header.text);

  const present = [stamp, time, temperature, wind, rain, chance, cloud].filter((column) => column !== null);
  const needed = neededCells(table, present, { location: options.location, noRows: "invalid-weather" });
  const { rows } = needed;
  const cellsOf = (column: Column): readonly string[] => needed.texts[present.indexOf(column)] ?? [];
  const stamps = stampColumn(
    { texts: cellsOf(stamp), column: stamp.header.text },
    time && { texts: cellsOf(time), column: time.header.text },
    rows,
    options.dateOrder,
    ROWS,
  );
  const degrees = temperatureCells(unit, ROWS, { probeFaults: false, sentinels: options.sentinels });
  const celsius = Float64Array.from(cellsOf(temperature), (text, i) =>
    degrees.celsius(
      temperatureOf(text, rows[i] ?? 0, temperature.header.text),
      rows[i] ?? 0,
      temperature.header.text,
    ),
  );
  const read = (field: WeatherField, column: Column | null, scale: Scale | null): ValuesRead | null =>
    column &&
    scale &&
    weatherValues(
      field,
      cellsOf(column),
      { entries: rows, column: column.header.text, places: ROWS },
      scale,
      options.sentinels,
    );
  const others = {
    wind: read("wind", wind, winds),
    rain: read("rain", rain, scales.rain),
    rainChance: read("rainChance", chance, scales.chance),
    cloud: read("cloud", cloud, clouds),
  };
  const { weather, notes } = assembleHours({ stamps, entries: rows, celsius, others }, ROWS, {
    zone: options.zone,
    headerOffset: time?.header.offset ?? stamp.header.offset,
    field: stamp.header.text,
  });
  return {
    weather,
    units: { temperature: unit.unit, wind: winds.unit },
    notes: [
      ...table.notes,
      ...columnNotes(
        table.header,
        time
          ? { date: stamp, time, temperature, wind, rain, chance, cloud }
          : { time: stamp, temperature, wind, rain, chance, cloud },
      ),
      ...needed.notes,
      ...stamps.notes,
      ...degrees.notes(),
      ...notes,
    ],
  };
}

/** The unit of the temperatures; assumed nowhere, because 59 °F taken for °C would look like a warm hour. */
function statedUnit({ header }: Column, options: HourlyOptions): ReturnType<typeof fileUnit> {
  const unit = fileUnit([headerUnit(header)], options.unit);
  if (unit.stated) return unit;
  throw new InputError(
    "unknown-unit",
    (name) =>
      `the column ${shown(header.text)} names no unit; write °C or °F into its header, or say ${name("unit")} C or ${name("unit")} F.`,
    { path: ["unit"], value: header.text },
  );
}
