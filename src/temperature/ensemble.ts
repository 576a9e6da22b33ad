import type { CivilDay } from "../time/civil-day.ts";
import type { TemperatureSeries } from "./series.ts";

/** Temperatures that may come. */
export interface WeatherEnsemble {
  readonly kind: "ensemble";
  readonly groups: readonly WeatherGroup[];
  /** The first day that is not known: up to it all members are the same. */
  readonly from: CivilDay;
  /** One sentence on what the members are. */
  readonly about: string;
}

/**
 * Ways in which the weather may go on that are as likely as each other, such as past years. From three on they
 * are taken as a sample of what may come, not as all that may come.
 */
export interface WeatherGroup {
  readonly members: readonly TemperatureSeries[];
  /** Share of belief in the group; the weights of an ensemble add up to 1. */
  readonly weight: number;
  /** What it is, such as `2012, 2013, 2014`. */
  readonly label: string;
}

/** Nodes and weights of the five-point Gauss-Hermite rule for a standard normal distribution. */
export const HERMITE_5 = [
  { z: -2.856970013872806, weight: 0.011257411327720693 },
  { z: -1.355626179974266, weight: 0.22207592200561266 },
  { z: 0, weight: 0.5333333333333333 },
  { z: 1.355626179974266, weight: 0.22207592200561266 },
  { z: 2.856970013872806, weight: 0.011257411327720693 },
];

/** Standard deviations with their sign, for labels. */
export function signed(z: number): string {
  return `${z < 0 ? "" : "+"}${z.toFixed(1)}`;
}
