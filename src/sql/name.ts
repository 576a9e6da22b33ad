import { InputError, type InputPath, shown } from "../errors.ts";
import type { Writing } from "./dialect.ts";

/** Name of a column or table; several parts for one that is qualified, such as `["weather", "days"]`. */
export type SqlName = string | readonly string[];

/**
 * Letters, marks, digits, space and `_ - . / ( ) °`. Quoting alone would do in one engine, but engines
 * disagree on how a quote within a name is escaped, and drivers and shells put values in at `:`, `%`, `$`
 * and `?`. No character that any of them gives a meaning within quotes is among these.
 */
const PLAIN = /^[\p{L}\p{M}\p{N}_ \-./()°]{1,128}$/u;

/**
 * A name in quotes.
 * @throws {InputError} `invalid-option` for a name with any other character, with two hyphens in a row (some
 *   tools take the rest of the line for a comment wherever they stand), or without any.
 */
export function quoted(name: SqlName, path: InputPath, { quote }: Writing): string {
  const parts: readonly unknown[] = typeof name === "string" ? [name] : Array.isArray(name) ? name : [];
  if (parts.length === 0) throw refused(name, path);
  return parts
    .map((part) => {
      if (typeof part !== "string" || !PLAIN.test(part) || part.includes("--")) throw refused(part, path);
      return `${quote}${part}${quote}`;
    })
    .join(".");
}

function refused(value: unknown, path: InputPath): InputError {
  return new InputError(
    "invalid-option",
    `${path.join(".")} is ${shown(value)}; a name is 1 to 128 letters, digits, spaces or _ - . / ( ) °, without two hyphens in a row. Rename it in a view.`,
    { path, value },
  );
}
