import { InputError, shown } from "../../errors.ts";
import type { Given } from "./arguments.ts";

/**
 * Whole numbers of an option, separated by commas, rising and each once; `undefined` when it was not given.
 * @param range Least and greatest number, and how many at most.
 * @throws {InputError} `invalid-option`.
 */
export function wholeNumbers(
  given: Given,
  name: string,
  range: { readonly from: number; readonly to: number; readonly most?: number },
): readonly number[] | undefined {
  const text = given.text(name);
  if (text === undefined) return undefined;
  const { from, to, most = Infinity } = range;
  const numbers = text.split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  if (numbers.length <= most && numbers.every((one) => Number.isInteger(one) && one >= from && one <= to))
    return [...new Set(numbers)].sort((a, b) => a - b);
  const what = most === 1 ? "a whole number" : "whole numbers separated by commas, each";
  throw new InputError(
    "invalid-option",
    `--${name} is ${shown(text)}; it must be ${what} from ${from} to ${to}.`,
    { path: [name], value: text },
  );
}
