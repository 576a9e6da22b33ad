import { InputError, finite } from "../errors.ts";
import { given } from "../given.ts";

/** A place on the earth, degrees. */
export interface Place {
  /** North is positive, -90 to 90. */
  readonly latitude: number;
  /** East is positive, -180 to 180. */
  readonly longitude: number;
}

/**
 * The place itself when its numbers can be one.
 * @throws {InputError} `invalid-number`, or `invalid-option` outside -90 to 90 and -180 to 180.
 */
export function checkedPlace(place: Place): Place {
  given(place, ["place"], "an object with latitude and longitude");
  within(place.latitude, 90, ["place", "latitude"]);
  within(place.longitude, 180, ["place", "longitude"]);
  return place;
}

/**
 * A coordinate itself when it lies between -limit and limit.
 * @throws {InputError} `invalid-number`, `invalid-option`.
 */
export function within(degrees: number, limit: number, path: readonly string[]): number {
  const value = finite(degrees, path, `degrees from -${limit} to ${limit}`);
  if (Math.abs(value) <= limit) return value;
  throw new InputError(
    "invalid-option",
    `${path.join(".")} is ${value}; it must be degrees from -${limit} to ${limit}.`,
    { path, value },
  );
}
