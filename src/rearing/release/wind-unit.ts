import { InputError, shown } from "../../errors.ts";

/** Units that wind is given in. */
export const WIND_UNITS = ["m/s", "km/h", "mph", "kn"] as const;

/** One of {@link WIND_UNITS}. */
export type WindUnit = (typeof WIND_UNITS)[number];

/** Metres a second in one of each unit: a mile is 1609.344 m, a knot one nautical mile of 1852 m an hour. */
const METRES_PER_SECOND: Readonly<Record<WindUnit, number>> = {
  "m/s": 1,
  "km/h": 1000 / 3600,
  mph: 1609.344 / 3600,
  kn: 1852 / 3600,
};

/**
 * Wind in m/s.
 * @throws {InputError} `unknown-unit`.
 * @example
 * metresPerSecond(36, "km/h") // → 10
 */
export function metresPerSecond(wind: number, unit: WindUnit): number {
  return wind * factorOf(unit);
}

/**
 * Wind in another unit, from m/s.
 * @throws {InputError} `unknown-unit`.
 * @example
 * windIn(10, "km/h").toFixed(6) // → "36.000000"
 */
export function windIn(metres: number, unit: WindUnit): number {
  return metres / factorOf(unit);
}

function factorOf(unit: WindUnit): number {
  if (Object.hasOwn(METRES_PER_SECOND, unit)) return METRES_PER_SECOND[unit];
  throw new InputError(
    "unknown-unit",
    `the unit of wind is ${shown(unit)}; it must be one of ${WIND_UNITS.join(", ")}.`,
    {
      path: ["unit"],
      value: unit,
    },
  );
}
