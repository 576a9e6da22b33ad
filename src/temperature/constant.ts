import { InputError, finite } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, dayNumber } from "../time/civil-day.ts";
import type { Celsius } from "../units.ts";
import type { ConstantTemperature } from "./series.ts";

/**
 * A temperature that is held, such as a room kept at 24 °C.
 * @param temperature °C
 * @param options.from First day it holds; always, when left out.
 * @param options.to Last day it holds; for ever, when left out.
 * @throws {InputError} `invalid-number`, `invalid-day`, `invalid-option` (`to` before `from`).
 */
export function constantTemperature(
  temperature: Celsius,
  options: { from?: CivilDay; to?: CivilDay } = {},
): ConstantTemperature {
  given(options, ["options"], "an object of options");
  finite(temperature, ["temperature"], "a temperature in °C");
  const { from = null, to = null } = options;
  const first = from === null ? -Infinity : dayNumber(from, ["from"]);
  const last = to === null ? Infinity : dayNumber(to, ["to"]);
  if (last < first) {
    throw new InputError(
      "invalid-option",
      `to is ${to}, before from ${from}; it must be the same day or later.`,
      {
        path: ["to"],
        value: to,
      },
    );
  }
  return { kind: "constant", temperature, from, to };
}
