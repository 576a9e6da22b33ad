import type { MilestoneId } from "../../forecast/chance.ts";
import { lifePath } from "../../forecast/question/life-path.ts";
import { given } from "../../given.ts";
import type { Note } from "../../notes.ts";
import { constantTemperature } from "../../temperature/constant.ts";
import { bestOf, outlookOf, ranked } from "./best-start.ts";
import { heatLimit, refuseHeldHarm } from "./heat-limit.ts";
import { scoredDays, searchTemperatures } from "./start-dates.ts";
import { startNotes } from "./start-notes.ts";
import type { DatePlan, DateTarget, RoomPlan, RoomTarget, StartAbsence, Target } from "./start-plan.ts";
import { highestLower, scoredRoom, scoredRooms } from "./start-temperatures.ts";
import { type CheckedTarget, checkedTarget } from "./target-day.ts";

/**
 * Which start puts a milestone on a wanted day with the best chance: which day to begin on at the temperatures to
 * come, or at which temperature to keep a room from a given day on.
 *
 * The chances are exact. For each start they are the share of the forecast's distribution that falls on the day:
 * animals that differ, an age that is not known, and the weather where past years or an ensemble stand for it.
 * For several animals the chance that at least one, or half of them, do it is averaged over the weather, which
 * they share. All days are tried; temperatures on a grid of 0.25 °C and then by golden section.
 * @returns All starts, the best first, and the best with its window; `best` is `null` with a reason where no start
 *   has a chance of one in a thousand.
 * @throws {InputError} What `forecast` throws; `invalid-option` also for held temperatures that are harmful.
 * @example
 * startFor({
 *   lifeCycle: danausPlexippus,
 *   start: { stage: "egg", count: 12, age: "new" },
 *   day: "2026-06-12",
 *   temperatures: constantTemperature(24),
 * }).best?.on // → "2026-05-15"
 */
export function startFor(target: DateTarget): DatePlan;
export function startFor(target: RoomTarget): RoomPlan;
export function startFor(target: DateTarget | RoomTarget): DatePlan | RoomPlan {
  given(target, ["target"], "an object with lifeCycle, start and day");
  return "constant" in target ? roomFor(target) : dayFor(target);
}

function dayFor(target: DateTarget): DatePlan {
  const checked = checkedTarget(target);
  const limit = heatLimit(target.lifeCycle, target.hottest);
  const temperatures = searchTemperatures(target);
  refuseHeldHarm(temperatures, limit);
  const days = scoredDays(target, temperatures, checked);
  const { best, absence } = bestOf(days, {
    earlier: "start earlier or choose a later day",
    later: "start later",
  });
  const outlook =
    best === null ? null : outlookOf(checked.inputFor(best.on, temperatures), checked.milestone);
  const notes = [...startNotes(target, temperatures), ...(outlook?.notes ?? [])];
  return {
    kind: "date",
    ...common(target, checked, notes, absence),
    ranked: ranked(days),
    limit,
    best: best === null || outlook === null ? null : { on: best.on, odds: best.odds, window: outlook.window },
  };
}

function roomFor(target: RoomTarget): RoomPlan {
  const checked = checkedTarget(target);
  const limit = heatLimit(target.lifeCycle, target.hottest);
  const rooms = scoredRooms(target, limit, checked);
  const found = bestOf(rooms, {
    earlier: "a warmer room, within what is safe, or an earlier start is needed",
    later: "a cooler room or a later start is needed",
  });
  const absence = tooCold(target, checked.milestone) ?? found.absence;
  const best = absence === null ? found.best : null;
  const shared = { kind: "room", on: target.on, ranked: ranked(rooms), limit } as const;
  if (best === null) {
    return { ...shared, ...common(target, checked, startNotes(target, null), absence), best };
  }
  const { temperature, odds } = best;
  const { window, notes } = outlookOf(
    checked.inputFor(target.on, constantTemperature(temperature)),
    checked.milestone,
  );
  const chanceAt = (degrees: number): number => scoredRoom(degrees, target, checked).odds?.chance ?? 0;
  return {
    ...shared,
    ...common(target, checked, [...startNotes(target, null), ...notes], null),
    best: {
      temperature,
      odds,
      window,
      ifCooler: chanceAt(temperature - 1),
      ifWarmer: chanceAt(temperature + 1),
    },
  };
}

function tooCold({ lifeCycle, start, constant }: RoomTarget, id: MilestoneId): StartAbsence | null {
  const { period, milestones } = lifePath(lifeCycle, start.stage, start.age ?? "unknown");
  const end = milestones.find((milestone) => milestone.id === id)?.period ?? period;
  const lower = highestLower(lifeCycle.stages.slice(period, end + 1));
  if (constant.to > lower) return null;
  return {
    reason: "too-cold",
    message: `No development to the end: the warmest room is ${constant.to} °C, and ${lower} °C is the highest lower threshold on the way; a room above it, within what is safe, is needed.`,
  };
}

/** What both plans say. */
function common(
  { lifeCycle, start, day, hours }: Target,
  { count, zone, milestone, aim }: CheckedTarget,
  notes: readonly Note[],
  absence: StartAbsence | null,
) {
  const { species, latinName, commonName } = lifeCycle;
  const { age } = lifePath(lifeCycle, start.stage, start.age ?? "unknown");
  return {
    species,
    latinName,
    commonName,
    start: { stage: start.stage, count, age },
    milestone,
    day,
    hours: hours ?? null,
    zone,
    aim,
    notes,
    absence,
  };
}
