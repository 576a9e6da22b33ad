import type { HeaderMeaning } from "./header-words.ts";

/**
 * Headers that say in plain words what their column is, by column. Taking them as what they say is nothing that a
 * reader has to be told of; taking `Datum` or `Temp, °F (sensor 2)` for something is.
 */
const PLAIN: Readonly<Record<string, readonly string[]>> = {
  date: ["date", "day"],
  time: ["time", "time of day", "timestamp", "datetime", "date time", "date and time"],
  min: ["min", "minimum", "tmin", "min temp", "temp min", "minimum temperature"],
  max: ["max", "maximum", "tmax", "max temp", "temp max", "maximum temperature"],
  temperature: ["temp", "temperature"],
  stage: ["stage"],
  on: ["on", "seen on", "date seen", "date", "day"],
  count: ["count", "number", "how many"],
  cohort: ["cohort", "group", "batch"],
  note: ["note", "notes", "remark", "remarks"],
  fate: ["fate"],
  notYet: ["not yet", "not yet on"],
  corrects: ["corrects", "corrects row"],
  written: ["written", "written at"],
  days: ["days"],
  animals: ["animals"],
};

const UNIT_AT_END = / ?(?:°[cf]|\(°?[cf]\)|\[°?[cf]\])$/;

/**
 * Whether a header is an exact plain word for the column it was taken as. Case, underscores and a unit at the end
 * do not matter.
 * @param as The column, as the readers name it.
 */
export function saysPlainly(header: HeaderMeaning, as: string): boolean {
  const words = header.text.toLowerCase().replaceAll("_", " ").replace(UNIT_AT_END, "").trim();
  return words === as || (PLAIN[as] ?? []).includes(words);
}
