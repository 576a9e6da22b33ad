import { InputError } from "../../errors.ts";
import { type TemperatureUnit, fahrenheitToCelsius } from "../../units.ts";
import type { Given } from "./arguments.ts";

/** Thresholds as they were typed, in the unit of the files or of `--unit`. */
export interface GivenThresholds {
  readonly lower: number;
  readonly upper: number | null;
  /** The same in °C, once the unit is known. */
  celsius(unit: TemperatureUnit): { readonly lower: number; readonly upper: number | null };
}

/** The thresholds that the options name. @throws {InputError} `invalid-option`, `invalid-thresholds`. */
export function givenThresholds(given: Given): GivenThresholds {
  given.needed("lower", "the lower developmental threshold, such as 10");
  const lower = given.number("lower") ?? 0;
  const upper = given.number("upper") ?? null;
  // Said here because the core would say it in °C.
  if (upper !== null && lower >= upper) {
    throw new InputError("invalid-thresholds", `--lower is ${lower}; it must be below --upper, ${upper}.`, {
      path: ["lower"],
      value: lower,
    });
  }
  return {
    lower,
    upper,
    celsius: (unit) =>
      unit === "C"
        ? { lower, upper }
        : { lower: fahrenheitToCelsius(lower), upper: upper === null ? null : fahrenheitToCelsius(upper) },
  };
}
