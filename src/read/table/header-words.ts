import type { TemperatureUnit } from "../../units.ts";

/** What a column can be for. */
export type ColumnRole = "date" | "time" | "stamp" | "min" | "max" | "temperature" | "location";

/** A header cell, understood as far as it goes. */
export interface HeaderMeaning {
  /** The header as it stands in the file, trimmed. */
  readonly text: string;
  readonly role: ColumnRole | null;
  /** The unit that the header names; `K` only so that it can be refused. */
  readonly unit: TemperatureUnit | "K" | null;
  /** Offset from UTC that the header names (`GMT-04:00`), milliseconds. */
  readonly offset: number | null;
}

const UNITS = new Map<string, TemperatureUnit | "K">([
  ["c", "C"],
  ["celsius", "C"],
  ["centigrade", "C"],
  ["f", "F"],
  ["fahrenheit", "F"],
  ["k", "K"],
  ["kelvin", "K"],
]);
const DEGREE_WORDS = new Set(["deg", "degree", "degrees"]);

// Words that say where or how a value was taken, not which value it is.
const SETTING_WORDS = new Set([
  "air",
  "daily",
  "local",
  "obs",
  "observation",
  "shelf",
  "room",
  "cage",
  "2m",
  "name",
  "id",
]);
const TEMPERATURE_WORDS = new Set(["t", "temp", "temperature", "temperatures", "value"]);

const WHOLE_HEADERS = new Map<string, ColumnRole>([
  ["date", "date"],
  ["day", "date"],
  ["datum", "date"],
  ["time", "time"],
  ["time of day", "time"],
  ["timestamp", "stamp"],
  ["time stamp", "stamp"],
  ["datetime", "stamp"],
  ["date time", "stamp"],
  ["date and time", "stamp"],
  ["min", "min"],
  ["minimum", "min"],
  ["low", "min"],
  ["lowest", "min"],
  ["tmin", "min"],
  ["tempmin", "min"],
  ["mintemp", "min"],
  ["max", "max"],
  ["maximum", "max"],
  ["high", "max"],
  ["highest", "max"],
  ["tmax", "max"],
  ["tempmax", "max"],
  ["maxtemp", "max"],
  ["location", "location"],
  ["station", "location"],
  ["site", "location"],
  ["place", "location"],
]);

const OFFSET = /\b(?:gmt|utc)\b\s*(?:([+-])\s*(\d{1,2})(?::?(\d{2}))?(?!\d))?/;

/**
 * What a header cell says: the role of its column, a temperature unit, an offset from UTC. Case,
 * punctuation and word order of the usual spellings do not matter.
 * @example
 * headerMeaning("Temp, °F (sensor 2)").unit // → "F"
 */
export function headerMeaning(header: string): HeaderMeaning {
  const text = header.trim();
  // Cells longer than this are prose, not headers.
  if (text.length > 200) return { text, role: null, unit: null, offset: null };
  const words = text
    .replace(/[º˚]/g, "°")
    .normalize("NFKC")
    .replace(/\u2212/g, "-")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replace(/_/g, " ")
    .toLowerCase();
  const offset = OFFSET.exec(words);
  const withoutOffset = words.replace(OFFSET, " ");
  const outside = tokens(withoutOffset.replace(/\([^)]*\)|\[[^\]]*\]/g, " "));
  const everything = tokens(withoutOffset);
  return {
    text,
    // Brackets may hold the word that matters, `Temperature (min)`, or a serial number: with them first.
    role: roleOf(everything) ?? roleOf(outside),
    unit: unitOf(outside) ?? unitOf(everything),
    offset: offset ? offsetOf(offset) : null,
  };
}

function tokens(words: string): string[] {
  return words
    .replace(/°/g, " deg ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}

function roleOf(words: readonly string[]): ColumnRole | null {
  const core = words.filter(
    (word) => !UNITS.has(word) && !DEGREE_WORDS.has(word) && !SETTING_WORDS.has(word),
  );
  if (core.length === 0) return null;
  const whole = WHOLE_HEADERS.get(core.join(" "));
  if (whole) return whole;
  const rest = core.filter((word) => !TEMPERATURE_WORDS.has(word));
  if (rest.length === 0) return "temperature";
  const role = rest.length < core.length ? WHOLE_HEADERS.get(rest.join(" ")) : undefined;
  return role === "min" || role === "max" ? role : null;
}

function unitOf(words: readonly string[]): TemperatureUnit | "K" | null {
  const named = new Set(words.flatMap((word) => UNITS.get(word) ?? []));
  const [unit] = named;
  return unit !== undefined && named.size === 1 ? unit : null;
}

function offsetOf(match: RegExpExecArray): number {
  const size = (Number(match[2] ?? 0) * 60 + Number(match[3] ?? 0)) * 60_000;
  return match[1] === "-" && size > 0 ? -size : size;
}
