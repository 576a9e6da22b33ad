import { InputError, type InputPath, shown } from "../../errors.ts";
import type { Forecast, Window } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { type Zone, knownZone, parseMoment } from "../../time/zone.ts";
import { forecastShape } from "./forecast-shape.ts";
import { inShape } from "./shape.ts";

/**
 * An earlier forecast from parsed JSON, as `forecast` made it and `JSON.stringify` wrote it, so that it can be
 * compared with what was seen since.
 * @param json The value, as `JSON.parse` gives it.
 * @throws {InputError} `invalid-forecast` with the path of what is wrong; `invalid-zone`, `invalid-day`,
 *   `invalid-instant`, `zone-needed` for values that look right and cannot be.
 */
export function readForecast(json: unknown): Forecast {
  const given = inShape(forecastShape, json, "invalid-forecast", "the forecast");
  const zone = given.zone === null ? null : knownZone(given.zone);
  parseMoment(given.found.on, zone ?? "UTC", ["found", "on"]);
  parseMoment(given.found.at, zone, ["found", "at"]);
  const [early, expected, late] = given.shares;
  if (!(early < expected && expected < late)) {
    throw refused(["shares"], given.shares, "three rising shares");
  }
  given.stages.forEach(({ begins }, i) => checkWindow(begins, zone, ["stages", i, "begins"]));
  given.signs.forEach(({ begins }, i) => checkWindow(begins, zone, ["signs", i, "begins"]));
  given.tables.forEach((table, i) => {
    const { days, degreeDays, total, origin } = table;
    days.forEach((day, k) => dayNumber(day, ["tables", i, "days", k]));
    for (const [name, column] of Object.entries({ degreeDays, total, origin })) {
      if (column.length !== days.length)
        throw refused(["tables", i, name], column, `a list as long as days, which has ${days.length}`);
    }
  });
  // Codes of notes are not checked: those of other releases are no reason to refuse a forecast.
  return { ...given, notes: given.notes as readonly Note[] };
}

function checkWindow(window: Window, zone: Zone, path: InputPath): void {
  const instants = [window.early, window.expected, window.late].flatMap((text, i) => {
    const at = [...path, ["early", "expected", "late"][i] ?? ""];
    return text === null ? [] : [{ at, text, instant: parseMoment(text, zone, at).instant ?? 0 }];
  });
  instants.forEach(({ at, text, instant }, i) => {
    if (instant < (instants[i - 1]?.instant ?? -Infinity))
      throw refused(at, text, "no earlier than the one before it");
  });
}

function refused(path: InputPath, value: unknown, mustBe: string): InputError {
  return new InputError("invalid-forecast", `${path.join(".")} is ${shown(value)}; it must be ${mustBe}.`, {
    path,
    value,
  });
}
