import type { Place } from "../../diurnal/place.ts";
import { InputError } from "../../errors.ts";
import type { Given } from "./arguments.ts";

/** The place that the options name, or `undefined`. @throws {InputError} `invalid-option` for half of one. */
export function givenPlace(given: Given): Place | undefined {
  const [latitude, longitude] = [given.number("latitude"), given.number("longitude")];
  if (latitude === undefined && longitude === undefined) return undefined;
  if (latitude !== undefined && longitude !== undefined) return { latitude, longitude };
  const missing = latitude === undefined ? "latitude" : "longitude";
  throw new InputError(
    "invalid-option",
    `--${missing} is missing; a place needs --latitude and --longitude.`,
    { path: [missing] },
  );
}
