/** Why an input was refused. Stable across releases; texts may be improved, codes may not. */
export type InputErrorCode =
  | "invalid-day"
  | "invalid-instant"
  | "invalid-number"
  | "invalid-zone"
  | "zone-needed"
  | "place-needed"
  | "invalid-thresholds"
  | "invalid-method"
  | "invalid-option"
  | "min-above-max"
  | "implausible-temperature"
  | "length-mismatch"
  | "no-temperatures"
  | "too-few-readings"
  | "missing-temperature"
  | "start-outside-series"
  | "conflicting-readings"
  | "invalid-weather"
  | "implausible-weather"
  | "invalid-trials"
  | "invalid-parameters"
  | "unknown-species"
  | "unknown-stage"
  | "invalid-life-cycle"
  | "invalid-found"
  | "invalid-log"
  | "invalid-forecast"
  | "ambiguous-date"
  | "unknown-column"
  | "unknown-format"
  | "unknown-unit"
  | "conflicting-units"
  | "ambiguous-column"
  | "unknown-location"
  | "skipped-local-time"
  | "binary-input"
  | "input-too-large"
  | "file-exists"
  | "file-busy"
  | "cannot-write"
  | "malformed-file";

/** Where a refused value stood: keys, column names and row numbers, outermost first. */
export type InputPath = readonly (string | number)[];

/**
 * What a caller calls an input of the library, such as `--date-order` for `dateOrder`.
 * @param phrase Words around the name, left out where the caller has no such input.
 */
export type Naming = (input: string, phrase?: (name: string) => string) => string;

/** A message as a function of what the inputs in it are called, so that a program can use its own names. */
export type Wording = (name: Naming) => string;

const OWN_NAMES: Naming = (input, phrase = (name) => name) => phrase(input);

/**
 * The one error that Moltline throws for bad input. `message` is a full sentence that names the place,
 * the value and what would be right; `code`, `path` and `value` carry the same for programs.
 */
export class InputError extends Error {
  override readonly name = "InputError";
  readonly code: InputErrorCode;
  /** Place of the bad value, e.g. `["found", "on"]` or `["row", 14, "Max"]`. */
  readonly path: InputPath;
  /** The refused value itself. */
  readonly value: unknown;
  readonly #wording: Wording;

  constructor(
    code: InputErrorCode,
    message: string | Wording,
    at: { path?: InputPath; value?: unknown } = {},
  ) {
    super(typeof message === "string" ? message : message(OWN_NAMES));
    this.code = code;
    this.path = at.path ?? [];
    this.value = at.value;
    this.#wording = typeof message === "string" ? () => message : message;
  }

  /**
   * The message with other names for the inputs in it, for programs that have their own, such as the options of a
   * command line.
   * @example
   * new InputError("zone-needed", (name) => `Give ${name("zone")}.`).worded(() => "--zone") // → "Give --zone."
   */
  worded(name: Naming): string {
    return this.#wording(name);
  }
}

/** A value as it stands in an error message: short, quoted when it is text, never a wall of data. */
export function shown(value: unknown): string {
  if (typeof value === "string") return `"${value.length > 60 ? `${value.slice(0, 57)}...` : value}"`;
  if (typeof value === "number" || typeof value === "boolean" || value === null || value === undefined)
    return String(value);
  return Array.isArray(value) ? `a list of ${value.length}` : `a value of type ${typeof value}`;
}

/**
 * Largest size of a number that is reckoned with. Nothing in the field comes near it, and the squares and products
 * of numbers below it do not overflow, so that no result turns into infinity or NaN on the way.
 */
export const LARGEST_NUMBER = 1e100;

/** Whether a value is a number that can be reckoned with. */
export function isUsable(value: unknown): value is number {
  return typeof value === "number" && Math.abs(value) <= LARGEST_NUMBER;
}

/**
 * The number itself when it is finite, and no larger than {@link LARGEST_NUMBER}.
 * @throws {InputError} `invalid-number` otherwise, naming the path.
 */
export function finite(value: unknown, path: InputPath, expected = "a finite number"): number {
  if (isUsable(value)) return value;
  throw new InputError("invalid-number", `${path.join(".")} is ${shown(value)}; it must be ${expected}.`, {
    path,
    value,
  });
}

// The distance takes time with the product of the lengths, and no name is near so long a one.
const LONGEST_NAME = 100;

/**
 * Names close to a mistyped one, nearest first, so that an error can offer them.
 * @param name What was typed.
 * @param known Every accepted name.
 * @param most How many to return at most.
 */
export function nearestNames(name: string, known: readonly string[], most = 3): string[] {
  const wanted = name.slice(0, LONGEST_NAME).toLowerCase();
  return known
    .map((candidate) => ({ candidate, distance: editDistance(wanted, candidate.toLowerCase()) }))
    .filter(
      ({ candidate, distance }) =>
        distance <= Math.max(3, candidate.length / 2) || candidate.includes(wanted.slice(0, 5)),
    )
    .sort((a, b) => a.distance - b.distance || a.candidate.localeCompare(b.candidate, "en"))
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

// Levenshtein distance, one row at a time.
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const substituted = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(substituted, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
