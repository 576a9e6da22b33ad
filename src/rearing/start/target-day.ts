import { binomialTail } from "../../numeric/binomial-tail.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import { type Chance, chanceBetween } from "../../forecast/chance.ts";
import { type ForecastInput, startOf } from "../../forecast/question/forecast-input.ts";
import { type CivilDay, dayNumber } from "../../time/civil-day.ts";
import {
  DAY_MS,
  type Instant,
  type Zone,
  endOfDay,
  instantsAt,
  knownZone,
  startOfDay,
  zoneOffset,
} from "../../time/zone.ts";
import { AIMS, type Aim, type Odds, type Scored, type Target } from "./start-plan.ts";

/** A target with everything in it checked. */
export interface CheckedTarget {
  readonly aim: Aim;
  readonly count: number;
  readonly zone: Zone;
  readonly milestone: NonNullable<Target["milestone"]>;
  /** The stretch of time in which it counts. */
  readonly from: Instant;
  readonly to: Instant;
  /** The forecast of a start on a day or at a time, at some temperatures. */
  inputFor(on: string, temperatures: ForecastInput["temperatures"]): ForecastInput;
}

/**
 * Checks a target.
 * @throws {InputError} For anything in it that cannot be used.
 */
export function checkedTarget(target: Target): CheckedTarget {
  given(target, ["target"], "an object with lifeCycle, start and day", "lifeCycle", "start", "day");
  const { lifeCycle, start, day, hours, method, place, aim = "one", milestone = "adult" } = target;
  const zone: Zone = target.zone == null ? null : knownZone(target.zone);
  dayNumber(day, ["day"]);
  if (!AIMS.includes(aim)) {
    throw new InputError("invalid-option", `aim is ${shown(aim)}; it must be one of ${AIMS.join(", ")}.`, {
      path: ["aim"],
      value: aim,
    });
  }
  const inputFor: CheckedTarget["inputFor"] = (on, temperatures) => ({
    lifeCycle,
    found: { on, ...start },
    temperatures,
    zone,
    ...(method !== undefined && { method }),
    ...(place !== undefined && { place }),
  });
  // What the forecast itself refuses is refused before any start is tried.
  const { count } = startOf(inputFor(day, { kind: "constant", temperature: 20, from: null, to: null }));
  return { aim, count, zone, milestone, inputFor, ...spanOf(day, hours, zone) };
}

/** The odds of a start, or why they are not known. */
export function scored<Start>(start: Start, input: ForecastInput, target: CheckedTarget): Scored<Start> {
  try {
    const { chance, absence } = chanceBetween(input, target.milestone, target.from, target.to);
    if (chance === null) return { ...start, odds: null, absence };
    return { ...start, odds: oddsOf(chance, target), absence: null };
  } catch (error) {
    // A start that no temperature covers is one of many, not a fault of the whole question.
    if (!(error instanceof InputError) || !UNCOVERED.includes(error.code)) throw error;
    const message = `No temperatures: ${error.message}`;
    return { ...start, odds: null, absence: { reason: "no-temperatures", message } };
  }
}

const UNCOVERED = ["start-outside-series", "missing-temperature"];

/** Given the weather, animals are independent, so the chances of a count are averaged over the weather. */
function oddsOf({ before, within, after, ways }: Chance, { count, aim }: CheckedTarget): Odds {
  const atLeast = (wanted: number): number =>
    ways.reduce((sum, way) => sum + way.weight * binomialTail(wanted, count, way.within), 0);
  const odds = { each: within, one: atLeast(1), half: atLeast(Math.ceil(count / 2)) };
  return { chance: odds[aim], ...odds, early: before, late: after };
}

function spanOf(day: CivilDay, hours: Target["hours"], zone: Zone): { from: Instant; to: Instant } {
  const next = endOfDay(day, zone);
  if (hours == null) return { from: startOfDay(day, zone), to: next };
  const [first, last] = [minutesOf(hours[0], 0), minutesOf(hours[1], 1)];
  if (first >= last) {
    throw new InputError(
      "invalid-option",
      `hours are ${hours.join(" to ")}; the first time must be before the second, on the same day.`,
      { path: ["hours"], value: hours },
    );
  }
  return {
    from: instantOn(day, first, zone),
    to: last === 24 * 60 ? next : instantOn(day, last, zone),
  };
}

/** Minutes after midnight on the clock. */
function minutesOf(time: string, index: number): number {
  const match = typeof time === "string" ? /^(\d{1,2}):(\d{2})$/.exec(time) : null;
  const [hour, minute] = [Number(match?.[1]), Number(match?.[2])];
  if (hour * 60 + minute <= 24 * 60 && minute < 60) return hour * 60 + minute;
  throw new InputError(
    "invalid-option",
    `hours.${index} is ${shown(time)}; it must be a time of day from 00:00 to 24:00, such as 09:30.`,
    { path: ["hours", index], value: time },
  );
}

/** When the clock shows a time; where it skips that time, what it would have shown. */
function instantOn(day: CivilDay, minutes: number, zone: Zone): Instant {
  const local = dayNumber(day) * DAY_MS + minutes * 60_000;
  return instantsAt(local, zone)[0] ?? local - zoneOffset(local - DAY_MS, zone ?? "UTC");
}
