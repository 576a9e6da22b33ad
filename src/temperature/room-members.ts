import { InputError, shown } from "../errors.ts";
import { given } from "../given.ts";
import type { WeatherEnsemble, WeatherGroup } from "./ensemble.ts";
import { roomTemperatures } from "./room-from-station.ts";
import type { Estimate, RoomRelation } from "./room-relation.ts";
import type { DailyTemperatures } from "./series.ts";

/** Nodes and weights of the Gauss-Hermite rules for a standard normal distribution, by how many there are. */
const RULES: readonly (readonly (readonly [node: number, weight: number])[])[] = [
  [[0, 1]],
  [
    [-1, 1 / 2],
    [1, 1 / 2],
  ],
  [
    [-Math.sqrt(3), 1 / 6],
    [0, 2 / 3],
    [Math.sqrt(3), 1 / 6],
  ],
  [
    [-Math.sqrt(3 + Math.sqrt(6)), 1 / (4 * (3 + Math.sqrt(6)))],
    [-Math.sqrt(3 - Math.sqrt(6)), 1 / (4 * (3 - Math.sqrt(6)))],
    [Math.sqrt(3 - Math.sqrt(6)), 1 / (4 * (3 - Math.sqrt(6)))],
    [Math.sqrt(3 + Math.sqrt(6)), 1 / (4 * (3 + Math.sqrt(6)))],
  ],
];

/**
 * What the temperatures of a room may be, given that its relation to the station is known only so well: an
 * ensemble that a forecast can run on. Level, damping and range ratio are each moved to `k` Gauss-Hermite
 * nodes of their standard errors, so there are k³ members with weights that add up to 1. The level is taken
 * at the station's mean of the compared days, where its error does not depend on the damping's.
 *
 * It carries the error of the relation, not the scatter of single days, which mostly cancels over a stage, nor
 * the error of the station's own forecast.
 * @param station Daily extremes of the station.
 * @param relation What `relateRoom` found.
 * @param k Nodes for each of the three, 1 to 4. Default 2: eight members, exact for everything that bends
 *   no more than a cubic.
 * @throws {InputError} `invalid-option` for another k.
 * @example
 * const days = Array.from({ length: 16 }, (_, i) => i);
 * const station = dailyTemperatures("1970-01-01", days.map((i) => 10 + i), days.map((i) => 20 + i));
 * const hours = Array.from({ length: 65 }, (_, i) => 6 * i);
 * const logger = temperatureReadings(hours.map((h) => h * 3_600_000), hours.map((h) => 21 + h / 48), { clock: "local" });
 * roomMembers(station, relateRoom(logger, station)).groups.length // → 8
 * @see Abramowitz, M. & Stegun, I. A. (1964), Handbook of Mathematical Functions, table 25.10, for nodes on
 *   the scale x√2 (from memory); the tests hold the rules to the moments of the normal distribution.
 */
export function roomMembers(station: DailyTemperatures, relation: RoomRelation, k = 2): WeatherEnsemble {
  given(station, ["station"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  given(relation, ["relation"], "what relateRoom returns", "damping", "level", "rangeRatio", "seen", "notes");
  const rule = RULES[k - 1];
  if (rule === undefined) {
    throw new InputError(
      "invalid-option",
      `k is ${shown(k)}; it must be a whole number from 1 to ${RULES.length}.`,
      { path: ["k"], value: k },
    );
  }
  const { level, damping, rangeRatio } = relation;
  const groups = rule.flatMap(([u, weightU]) =>
    rule.flatMap(([v, weightV]) =>
      rule.map(([w, weightW]): WeatherGroup => {
        const moved = {
          ...relation,
          level: at(level, u),
          damping: at(damping, v),
          rangeRatio: at(rangeRatio, w),
        };
        return {
          members: [roomTemperatures(station, moved)],
          weight: weightU * weightV * weightW,
          label: `level ${signed(u)}, damping ${signed(v)}, range ${signed(w)} standard errors`,
        };
      }),
    ),
  );
  return {
    kind: "ensemble",
    groups,
    from: station.start,
    about: `The room is estimated from the station by ${relation.days} days that both were measured; the members span the standard errors of that relation.`,
  };
}

function at({ value, standardError }: Estimate, node: number): Estimate {
  return { value: value + node * standardError, standardError };
}

function signed(node: number): string {
  return `${node < 0 ? "-" : "+"}${Math.abs(node).toFixed(1)}`;
}
