import { checkedPlace } from "../../diurnal/place.ts";
import { InputError, shown } from "../../errors.ts";
import { fixedText } from "../layout/number-text.ts";

/** Where animals were seen, as far as it is to be told. */
export interface SharedPlace {
  /** Degrees, north positive, in WGS84. */
  readonly latitude: number;
  /** Degrees, east positive, in WGS84. */
  readonly longitude: number;
  /** How far the true place may be from this point, metres; left out where it is not known. */
  readonly uncertaintyMetres?: number;
  readonly country?: string;
  /** Two letters, ISO 3166-1. */
  readonly countryCode?: string;
  readonly stateProvince?: string;
  /** In words, such as a park. Not rounded, so nothing exact belongs here. */
  readonly locality?: string;
}

/** A place as it is shared. */
export interface RoundedPlace {
  readonly latitude: string;
  readonly longitude: string;
  /** Metres, or `null` where the caller's uncertainty is not known. */
  readonly uncertaintyMetres: number | null;
  /** What the rounding is to, degrees. */
  readonly precision: number;
}

/** Metres in a degree of the equator: 40 075.017 km (WGS84, semi-major axis 6 378 137 m) in 360 parts. */
const METRES_IN_DEGREE = 111_319.5;

/** Decimals beyond which coordinates are closer than a room. */
const MOST_DECIMALS = 6;

/**
 * A place rounded to a number of decimals. What the rounding may have moved it by is added to its uncertainty: half
 * the diagonal of the cell, taken where the cell is widest, at its side towards the equator.
 * @throws {InputError} `invalid-number`, `invalid-option`.
 */
export function roundedPlace(place: SharedPlace, decimals: number): RoundedPlace {
  const { latitude, longitude } = checkedPlace(place);
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > MOST_DECIMALS) {
    throw refused("decimals", decimals, `a whole number from 0 to ${MOST_DECIMALS}`);
  }
  const { uncertaintyMetres } = place;
  // The standard has no uncertainty of zero: no place is known that well.
  if (uncertaintyMetres !== undefined && !(uncertaintyMetres > 0 && Number.isFinite(uncertaintyMetres)))
    throw refused("place.uncertaintyMetres", uncertaintyMetres, "metres above 0, or left out");
  if (place.countryCode !== undefined && !/^[A-Z]{2}$/.test(place.countryCode))
    throw refused("place.countryCode", place.countryCode, "two capital letters, such as US");
  const half = (METRES_IN_DEGREE * 10 ** -decimals) / 2;
  const widest = Math.max(0, Math.abs(latitude) - 10 ** -decimals / 2);
  const moved = Math.hypot(half, half * Math.cos((widest * Math.PI) / 180));
  return {
    latitude: fixedText(latitude, decimals),
    longitude: fixedText(longitude, decimals),
    uncertaintyMetres: uncertaintyMetres === undefined ? null : Math.ceil(uncertaintyMetres + moved),
    precision: Number((10 ** -decimals).toFixed(decimals)),
  };
}

function refused(path: string, value: unknown, mustBe: string): InputError {
  return new InputError("invalid-option", `${path} is ${shown(value)}; it must be ${mustBe}.`, {
    path: path.split("."),
    value,
  });
}
