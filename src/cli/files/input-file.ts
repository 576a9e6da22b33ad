import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { type ReadOptions, TEMPERATURE_FORMATS, readTemperatures } from "../../read/index.ts";
import type { TemperatureUnit } from "../../units.ts";
import type { Given } from "../options/arguments.ts";
import type { Terminal } from "../terminal.ts";

/** Orders in which a date can be written. */
export const DATE_ORDERS = ["year-first", "month-first", "day-first"] as const;

export const UNITS: readonly TemperatureUnit[] = ["C", "F"];

/** Temperatures of a file, read as the options say. */
export async function readTemperatureFile(
  path: string,
  given: Given,
  terminal: Terminal,
): Promise<ReturnType<typeof readTemperatures>> {
  return inFile(path, async () => {
    const bytes = await terminal.read(path);
    if (bytes.length === 0 && path === "-") {
      throw new InputError(
        "no-temperatures",
        (name) =>
          `there is nothing in it; name a file${name("--temperatures", (it) => ` with ${it}`)}${name("--constant", (it) => `, give ${it}`)}, or pipe a file in.`,
        { path: ["temperatures"] },
      );
    }
    return readTemperatures(bytes, readOptions(given));
  });
}

/** Runs a reader and puts the name of the file before what it refuses. */
export async function inFile<Result>(path: string, read: () => Promise<Result>): Promise<Result> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof InputError) || error.path[0] === "file") throw error;
    const name = fileName(path);
    throw new InputError(error.code, (names) => `${name}: ${error.worded(names)}`, {
      path: [name, ...error.path],
      value: error.value,
    });
  }
}

/** Notes with the name of their file before them. */
export function notesAbout(path: string, notes: readonly Note[]): Note[] {
  return notes.map(({ code, message }) => ({ code, message: `${fileName(path)}: ${message}` }));
}

/** A file as messages name it. */
export function fileName(path: string): string {
  return path === "-" ? "standard input" : path;
}

function readOptions(given: Given): ReadOptions {
  return {
    unit: given.choice("unit", UNITS),
    zone: given.text("zone"),
    location: given.text("place"),
    format: given.choice("format", TEMPERATURE_FORMATS),
    dateOrder: given.choice("date-order", DATE_ORDERS),
    columns: {
      date: given.text("date-column"),
      time: given.text("time-column"),
      min: given.text("min-column"),
      max: given.text("max-column"),
      temperature: given.text("temperature-column"),
    },
    longestGapHours: given.number("longest-gap"),
    exchangeSwapped: given.flag("exchange-swapped"),
    sentinels: [...given.numbers("missing")],
  };
}
