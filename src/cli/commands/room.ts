import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { roomNotes, roomTemperatures } from "../../temperature/room-from-station.ts";
import { relateRoom } from "../../temperature/room-relation.ts";
import type { DailyTemperatures, TemperatureReadings, TemperatureSeries } from "../../temperature/series.ts";
import { addDays } from "../../time/civil-day.ts";
import { knownZone } from "../../time/zone.ts";
import { dailyTemperaturesCsv, notesText, roomText } from "../../write/index.ts";
import { wrapped } from "../../write/layout/text-layout.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { filledSeries, gapPolicy } from "../options/fill-options.ts";
import { inFile, notesAbout, readTemperatureFile } from "../files/input-file.ts";
import {
  COLUMN_HELP,
  READING_OPTIONS,
  UNIT_AND_PLACE_HELP,
  withoutOptions,
} from "../options/reading-options.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

export const roomCommand: Command = {
  name: "room",
  help: `moltline room: how your room or cage differs from the weather station.

  moltline room --logger shelf.csv --station station.csv
  moltline room --logger shelf.csv --station station.csv --csv > room.csv
  moltline forecast --temperatures room.csv ...

Let a logger run where the animals are for two weeks or more. From the days that
the station was measured too, this learns how the room follows the weather, and
estimates the room for all days of the station, also those without a logger.
Keep logger and cage out of the sun.

  --logger FILE         readings in the room: a time and a temperature
  --station FILE        daily minimum and maximum of the station
  --at-least DAYS       fewest days in both files (default 14, at least 5)
  --csv                 print the estimated days alone, as date, minimum and
                        maximum: a file for forecast --temperatures; notes then
                        go to standard error
  --unit C|F            unit of files that do not say it; those that say another
                        are refused
${UNIT_AND_PLACE_HELP}
${COLUMN_HELP}
Place and the columns of date, min and max are about the station's file, those
of time and temperature about the logger's.

  --json                print relation and estimated days as JSON`,
  options: {
    ...READING_OPTIONS,
    logger: "text",
    station: "text",
    "at-least": "text",
    csv: "flag",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const loggerPath = given.needed("logger", "the file of the logger's readings in the room");
  const stationPath = given.needed("station", "the file of the station's days");
  if (given.flag("csv") && given.flag("json")) {
    throw new InputError("invalid-option", "--csv and --json were both given; give one of them.", {
      path: ["csv"],
    });
  }
  const zone = given.text("zone");
  const [atLeast] = wholeNumbers(given, "at-least", { from: 5, to: 1000, most: 1 }) ?? [];
  if (zone !== undefined) knownZone(zone);
  const logger = await fileOf(loggerPath, LOGGER_HAS_NOT, readingsOnly, given, terminal);
  const station = await fileOf(stationPath, STATION_HAS_NOT, daysOnly, given, terminal);
  const filled = filledSeries(station.series, gapPolicy(given, null), stationPath);
  const days = filled.series.kind === "daily" ? filled.series : station.series;
  const relation = relateRoom(logger.series, days, {
    ...(zone !== undefined && { zone }),
    ...(atLeast !== undefined && { atLeast }),
  });
  const estimated = roomTemperatures(days, relation);
  const notes: Note[] = [
    ...roomNotes(days, relation),
    ...logger.notes,
    ...station.notes,
    ...filled.assumptions,
  ];
  if (given.flag("csv")) {
    terminal.out(dailyTemperaturesCsv(estimated));
    if (notes.length > 0) terminal.err(`${notesText(notes)}\n`);
  } else if (given.flag("json")) {
    const rows = Array.from(estimated.min, (min, i) => ({
      date: addDays(estimated.start, i),
      min: numberOrNull(min),
      max: numberOrNull(estimated.max[i] ?? Number.NaN),
    }));
    terminal.out(`${JSON.stringify({ relation, unit: "C", days: rows, notes }, null, 2)}\n`);
  } else {
    const next = wrapped("--csv prints the estimated days as a file that forecast --temperatures reads.");
    const parts = [roomText(relation, estimated), next, notesText(notes)];
    terminal.out(`${parts.filter((part) => part !== "").join("\n\n")}\n`);
  }
}

const LOGGER_HAS_NOT = ["place", "date-column", "min-column", "max-column"];
const STATION_HAS_NOT = ["time-column", "temperature-column"];

async function fileOf<Series extends TemperatureSeries>(
  path: string,
  without: readonly string[],
  wanted: (series: TemperatureSeries) => Series,
  given: Given,
  terminal: Terminal,
): Promise<{ series: Series; notes: readonly Note[] }> {
  const { series, notes } = await readTemperatureFile(path, withoutOptions(given, without), terminal);
  return inFile(path, () => Promise.resolve({ series: wanted(series), notes: notesAbout(path, notes) }));
}

function readingsOnly(series: TemperatureSeries): TemperatureReadings {
  if (series.kind === "readings") return series;
  throw wrongKind("logger", "readings of the logger, each with its time", series);
}

function daysOnly(series: TemperatureSeries): DailyTemperatures {
  if (series.kind === "daily") return series;
  throw wrongKind("station", "a minimum and a maximum of the station for each day", series);
}

function wrongKind(option: string, needed: string, { kind }: TemperatureSeries): InputError {
  const has = kind === "daily" ? "days" : kind === "readings" ? "readings" : "a held temperature";
  return new InputError("unknown-format", `--${option} needs ${needed}; this file has ${has}.`, {
    path: [option],
    value: kind,
  });
}

/** JSON has no word for a missing number but `null`. */
function numberOrNull(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}
