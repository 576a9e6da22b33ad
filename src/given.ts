// Refusals of another kind of value than a function takes, for callers without types: where they hand over nothing,
// or something else, the error names the place instead of a property that cannot be read.

import { InputError, type InputPath, finite, shown } from "./errors.ts";

/**
 * Refuses what is no object, or one without what is needed: callers without types may hand over anything.
 * @param expected What it must be, in words.
 * @param needed Properties that it must have.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function given(value: unknown, path: InputPath, expected: string, ...needed: readonly string[]): void {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw refused(shown(value), path, expected, value);
  }
  for (const key of needed) {
    if (Reflect.get(value, key) == null) throw refused(`an object without ${key}`, path, expected, value);
  }
}

// Apart, so that the check itself is small enough to be inlined: some of it runs once a day.
function refused(what: string, path: InputPath, expected: string, value: unknown): InputError {
  const message = `${path.join(".") || "the value"} is ${what}; it must be ${expected}.`;
  return new InputError("invalid-option", message, { path, value });
}

/**
 * Refuses what is no list, and a list with holes or lists in it.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function givenList(value: unknown, path: InputPath, expected = "a list"): void {
  if (!Array.isArray(value)) throw refused(shown(value), path, expected, value);
  const list: readonly unknown[] = value;
  const hole = list.findIndex((one) => one == null || Array.isArray(one));
  if (hole < 0) return;
  throw new InputError(
    "invalid-option",
    `${[...path, hole].join(".")} is ${shown(list[hole])}; no entry of the list may be missing or be a list.`,
    { path: [...path, hole], value: list[hole] },
  );
}

/**
 * Refuses what is no column of numbers. Numbers themselves are looked at by those who reckon with them; here it is
 * that there are as many as there are said to be, so that a made-up length cannot fill the memory.
 * @throws {InputError} `invalid-option`, `invalid-number`, naming the path.
 */
export function givenColumn(value: ArrayLike<unknown>, path: InputPath): void {
  const isColumn = Array.isArray(value) || (ArrayBuffer.isView(value) && "length" in value);
  if (!isColumn) throw refused(shown(value), path, "a list of numbers", value);
  if (!Array.isArray(value)) return;
  const list: readonly unknown[] = value;
  const odd = list.findIndex((one) => typeof one !== "number");
  if (odd >= 0) finite(list[odd], [...path, odd], "a number");
}

/**
 * Refuses what is no function.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function givenFunction(value: unknown, path: InputPath): void {
  if (typeof value === "function") return;
  throw refused(shown(value), path, "a function", value);
}

/**
 * Refuses what is no text.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function givenText(value: unknown, path: InputPath): void {
  if (typeof value !== "string") throw refused(shown(value), path, "a text", value);
}

/**
 * Refuses what is none of some texts.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function givenOneOf(value: unknown, path: InputPath, known: readonly string[]): void {
  if (known.some((one) => one === value)) return;
  throw refused(shown(value), path, `one of ${known.join(", ")}`, value);
}
