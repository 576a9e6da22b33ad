import { InputError, finite } from "../../errors.ts";
import { greatest } from "../../numeric/extremes.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { constantTemperature } from "../../temperature/constant.ts";
import type { Celsius } from "../../units.ts";
import { ranked } from "./best-start.ts";
import { goldenSection } from "../../numeric/golden-section.ts";
import { type HeatLimit, refuseHarm } from "./heat-limit.ts";
import type { RoomTarget, Scored, StartTemperature } from "./start-plan.ts";
import { type CheckedTarget, scored } from "./target-day.ts";

/** Steps of the grid, °C. Over a stage of weeks a quarter of a degree moves the date by hours. */
const STEP: Celsius = 0.25;

/** No thermostat does better, °C. */
const FINEST: Celsius = 0.01;

/** The odds of a room held at a temperature. */
export function scoredRoom(
  temperature: Celsius,
  { on }: RoomTarget,
  target: CheckedTarget,
): Scored<StartTemperature> {
  return scored({ temperature }, target.inputFor(on, constantTemperature(temperature)), target);
}

/**
 * Temperatures of a grid through the range, and the best of those around its best point by golden section, in
 * order.
 * @throws {InputError} `invalid-number`, `invalid-option` for a range that runs backwards or is harmful.
 */
export function scoredRooms(
  room: RoomTarget,
  limit: HeatLimit,
  target: CheckedTarget,
): Scored<StartTemperature>[] {
  const { from, to } = checkedRange(room, limit);
  const count = Math.max(1, Math.ceil((to - from) / STEP - 1e-9));
  const grid = Array.from({ length: count + 1 }, (_, i) => rounded(Math.min(to, from + i * STEP)));
  const rooms = [...new Set(grid)].map((temperature) => scoredRoom(temperature, room, target));
  const [best] = ranked(rooms);
  if (best?.odds == null || best.odds.chance === 0 || from === to) return rooms;
  const low = Math.max(from, best.temperature - STEP);
  const high = Math.min(to, best.temperature + STEP);
  const chanceAt = (temperature: Celsius): number => scoredRoom(temperature, room, target).odds?.each ?? 0;
  const top = rounded(goldenSection(chanceAt, low, high, FINEST / 2));
  const finer = rooms.some(({ temperature }) => temperature === top) ? [] : [scoredRoom(top, room, target)];
  return [...rooms, ...finer].sort((a, b) => a.temperature - b.temperature);
}

function checkedRange({ constant }: RoomTarget, limit: HeatLimit): RoomTarget["constant"] {
  const from = finite(constant.from, ["constant", "from"], "a temperature in °C");
  const to = finite(constant.to, ["constant", "to"], "a temperature in °C");
  if (from > to || from < COLDEST) {
    throw new InputError(
      "invalid-option",
      `constant runs from ${from} to ${to} °C; it must run from the coolest to the warmest, from ${COLDEST} °C up.`,
      { path: ["constant"], value: from },
    );
  }
  refuseHarm(to, limit, ["constant", "to"]);
  return { from, to };
}

/** Colder is no room. */
const COLDEST: Celsius = -20;

/** The highest lower threshold of some stages, °C: held at or below it, no animal gets through all of them. */
export function highestLower(stages: LifeCycle["stages"]): Celsius {
  return greatest(stages.map(({ lower }) => lower.value));
}

function rounded(temperature: Celsius): Celsius {
  return Number(temperature.toFixed(2));
}
