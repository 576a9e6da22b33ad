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
 * @example
 * metresPerSecond(36, "km/h") // → 10
 */
export function metresPerSecond(wind: number, unit: WindUnit): number {
  return wind * METRES_PER_SECOND[unit];
}

/**
 * Wind in another unit, from m/s.
 * @example
 * windIn(10, "km/h").toFixed(6) // → "36.000000"
 */
export function windIn(metres: number, unit: WindUnit): number {
  return metres / METRES_PER_SECOND[unit];
}
