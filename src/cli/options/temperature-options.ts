import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { POSSIBLE_CELSIUS } from "../../read/index.ts";
import { constantTemperature } from "../../temperature/constant.ts";
import { joinTemperatures } from "../../temperature/join.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { knownZone } from "../../time/zone.ts";
import { type TemperatureUnit, fahrenheitToCelsius } from "../../units.ts";
import type { Given, OptionTable } from "./arguments.ts";
import { filledSeries, gapPolicy, givenNormals, normalsAfter } from "./fill-options.ts";
import { UNITS, notesAbout, readTemperatureFile } from "../files/input-file.ts";
import { COLUMN_HELP, FORMAT_HELP, RECORD_OPTIONS, UNIT_AND_PLACE_HELP } from "./reading-options.ts";
import type { Terminal } from "../terminal.ts";

/** Options that say where temperatures come from. */
export const TEMPERATURE_OPTIONS: OptionTable = { ...RECORD_OPTIONS, constant: "text", normals: "text" };

/** Their part of the help text. */
export const TEMPERATURE_HELP = `Temperatures
  --temperatures FILE   daily minimum and maximum, or logger readings: CSV, JSON
                        or GHCN-Daily; - for standard input, which is also read
                        when nothing is named. Give it again for more files:
                        the first that covers a moment counts.
  --constant DEGREES    a room kept at this temperature, after the files if any
  --unit C|F            unit of files that do not say it, and of --constant;
                        files that say another are refused
${UNIT_AND_PLACE_HELP}
  --normals FILE        past years at the same place: their means fill the gaps
                        and go on where the other temperatures end
${COLUMN_HELP}
${FORMAT_HELP}`;

/** Temperatures as the options ask for them, with what reading them found. */
export interface GivenTemperatures {
  readonly series: TemperatureSeries;
  readonly notes: readonly Note[];
  /** What days rest on that are not in the files, for results that do not say it themselves. */
  readonly assumptions: readonly Note[];
  /** Unit of the options, and of the files where they agree. */
  readonly unit: TemperatureUnit;
}

/**
 * Reads the temperatures that the options name. With neither a file nor a constant, standard input is read.
 * @param known What is to be taken of the files, and what comes between them and the temperatures assumed after
 *   them, such as a weather forecast.
 * @throws {InputError} What the readers throw, with the name of the file before the message.
 */
export async function givenTemperatures(
  given: Given,
  terminal: Terminal,
  known: (files: readonly TemperatureSeries[]) => readonly TemperatureSeries[] = (files) => files,
): Promise<GivenTemperatures> {
  const givenUnit = given.choice("unit", UNITS);
  const zone = given.text("zone");
  // Before any file is read: the fault is not in the file.
  if (zone !== undefined) knownZone(zone);
  const constant = given.number("constant");
  const files = given.list("temperatures");
  const normalsFile = given.text("normals");
  if (files.length === 0 && constant !== undefined && normalsFile !== undefined) {
    throw new InputError(
      "invalid-option",
      "--normals is never used beside --constant alone, which holds for ever; leave one of them out.",
      { path: ["normals"], value: normalsFile },
    );
  }
  const paths = files.length === 0 && constant === undefined ? ["-"] : files;
  const notes: Note[] = [];
  const assumptions: Note[] = [];
  const read: TemperatureSeries[] = [];
  const past = await givenNormals(normalsFile, given, terminal);
  const policy = gapPolicy(given, past?.normals ?? null);
  // With several files a note has to say which it is about.
  const several = paths.length + (past === null ? 0 : 1) > 1;
  const inFahrenheit: boolean[] = [];
  for (const path of paths) {
    const result = await readTemperatureFile(path, given, terminal);
    notes.push(...(several ? notesAbout(path, result.notes) : result.notes));
    inFahrenheit.push(result.notes.some(({ code }) => code === "unit-converted"));
    const filled = filledSeries(result.series, policy, path);
    assumptions.push(...filled.assumptions);
    notes.push(...filled.notes);
    read.push(filled.series);
  }
  if (past !== null && normalsFile !== undefined) notes.push(...notesAbout(normalsFile, past.notes));
  const unit = givenUnit ?? (inFahrenheit.length > 0 && inFahrenheit.every(Boolean) ? "F" : "C");
  const series = [...known(read)];
  if (constant !== undefined) {
    series.push(constantTemperature(heldCelsius(constant, unit)));
    assumptions.push({
      code: "temperatures-assumed",
      message: `Where no file has temperatures, ${constant} °${unit} is assumed to be held.`,
    });
  }
  if (past !== null) {
    series.push(...normalsAfter(series, past.normals));
    assumptions.push({
      code: "temperatures-normal",
      message: "Days that no file has rest on the means of past years, not on this year's temperatures.",
    });
  }
  const [only] = series;
  return {
    series: series.length === 1 && only !== undefined ? only : joinTemperatures(...series),
    notes,
    assumptions,
    unit,
  };
}

/** A held temperature in °C; one that no animal is kept at is most likely in the other unit. */
function heldCelsius(temperature: number, unit: TemperatureUnit): number {
  const celsius = unit === "F" ? fahrenheitToCelsius(temperature) : temperature;
  if (celsius >= POSSIBLE_CELSIUS.low && celsius <= POSSIBLE_CELSIUS.high) return celsius;
  throw new InputError(
    "implausible-temperature",
    `--constant is ${temperature} °${unit}, which no place has; give --unit if it is in the other unit.`,
    { path: ["constant"], value: temperature },
  );
}
