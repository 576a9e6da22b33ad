import { InputError, shown } from "../../errors.ts";
import type { WindUnit } from "../../rearing/release/wind-unit.ts";

// Words and signs as headers have them.
const WIND_WORDS: readonly (readonly [RegExp, WindUnit])[] = [
  [/\b(?:km\s*\/\s*hr?|kmh|kph|km per hour)\b/, "km/h"],
  [/\b(?:mph|mi\s*\/\s*hr?|miles per hour)\b/, "mph"],
  [/\b(?:kn|kts?|knots?)\b/, "kn"],
  [/\b(?:m\s*\/\s*s(?:ec)?|mps|m s-1|met(?:er|re)s per second)\b/, "m/s"],
];

/** The unit of wind that a header names, or `null`. @throws {InputError} `conflicting-units` for two. */
export function windUnitOf(header: string): WindUnit | null {
  const text = header.normalize("NFKC").replaceAll("_", " ").toLowerCase();
  const named = WIND_WORDS.flatMap(([pattern, unit]) => (pattern.test(text) ? [unit] : []));
  if (named.length <= 1) return named[0] ?? null;
  throw new InputError(
    "conflicting-units",
    `the column ${shown(header)} names the units ${named.join(" and ")}; it must name one.`,
    { path: ["windUnit"], value: header },
  );
}

/** Units that files give rain in. */
export type RainUnit = "mm" | "in" | "%";

/** The unit of rain or cloud that a header names, or `null`. */
export function rainUnitOf(header: string): RainUnit | null {
  const text = header.normalize("NFKC").replaceAll("_", " ").toLowerCase();
  if (/%|\b(?:percent|per cent|pct)\b/.test(text)) return "%";
  if (/\b(?:mm|millimet(?:er|re)s?)\b/.test(text)) return "mm";
  // `in` in the middle of a header is a plain word: rain in the hour.
  return /\binch(?:es)?\b|\bin\.?$|[([]\s*in\.?\s*[)\]]/.test(text.trim()) ? "in" : null;
}

/** Whether a header counts cloud in eighths of the sky. */
export function saysOktas(header: string): boolean {
  return /\b(?:okta|octa|eighth)s?\b/i.test(header.replaceAll("_", " "));
}
