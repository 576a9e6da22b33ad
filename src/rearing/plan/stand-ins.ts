import { normalQuantile } from "../../numeric/normal-distribution.ts";
import type { Forecast, Window } from "../../forecast/question/result.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import { DAY_MS, noonOf, parseMoment } from "../../time/zone.ts";

/**
 * One animal that stands for a share of a cohort: the one that a given share of animals is ahead of in every
 * stage. Times are those of the clock on the wall, in milliseconds, since a plan is kept by that clock.
 */
export interface StandIn {
  /** Share of animals at least as early, 0 to 1. */
  readonly share: number;
  /** When it begins each stage of the cohort's order; `Infinity` where the forecast does not reach. */
  readonly begins: readonly number[];
  /** Share of the food of its first stage that it has still to eat. */
  readonly left: number;
  /** Share of its first stage that it had done at the start, 0 to 1. */
  readonly done: number;
}

/** What stand-ins are made from. */
export interface StandInSource {
  readonly lifeCycle: LifeCycle;
  readonly forecast: Forecast;
  /** The stage that they are in at the start. */
  readonly stage: StageId;
  /** When that is, as the clock on the wall shows it. */
  readonly start: number;
}

/** How many animals stand for a cohort, whatever its count: each for one in a hundred. */
export const STAND_INS = 100;

/** A hundred animals in the middle of equal shares. */
export function standInsOf(source: StandInSource): StandIn[] {
  return Array.from({ length: STAND_INS }, (_, i) => standInAt(source, (i + 0.5) / STAND_INS));
}

/**
 * The animal at a share. Between and beyond the three shares that a forecast gives, times run along two normal
 * curves that meet in the middle one: one as wide as early to expected, one as wide as expected to late. Where
 * one side is not known, it is taken to be as wide as the other.
 */
export function standInAt(source: StandInSource, share: number): StandIn {
  const { forecast, start } = source;
  const begins = [start];
  for (const { begins: window } of forecast.stages) {
    // Animals wait for nobody, but none begins a stage before the one that it follows.
    begins.push(Math.max(begins.at(-1) ?? start, timeAt(window, forecast.shares, share)));
  }
  const done = doneAt(source, share);
  return { share, begins, left: foodLeft(source, done), done };
}

/** The stages of a cohort, from the one it starts in to the adult. */
export function stagesOf({ forecast, stage }: Pick<StandInSource, "forecast" | "stage">): StageId[] {
  return [stage, ...forecast.stages.map((later) => later.stage)];
}

/** When an animal at a share reaches something, as the clock on the wall shows it; `Infinity` if not known. */
export function timeAt(window: Window, shares: Forecast["shares"], share: number): number {
  const z = normalQuantile(share);
  const [zEarly, zMiddle, zLate] = shares.map(normalQuantile);
  const { early, expected, late } = window;
  if (expected === null) return early !== null && z <= (zEarly ?? 0) ? wallClock(early) : Infinity;
  const middle = wallClock(expected);
  const before = early === null ? null : (middle - wallClock(early)) / ((zMiddle ?? 0) - (zEarly ?? -1));
  const after = late === null ? null : (wallClock(late) - middle) / ((zLate ?? 1) - (zMiddle ?? 0));
  const width = z < (zMiddle ?? 0) ? (before ?? after ?? 0) : (after ?? before ?? 0);
  return middle + (z - (zMiddle ?? 0)) * width;
}

/** What the clock on the wall shows at an instant, in milliseconds; offsets are left aside. */
export function wallClock(instant: string): number {
  const { day, instant: at } = parseMoment(instant.slice(0, 19), null, ["instant"]);
  return at ?? noonOf(day, null);
}

/** Share of a span that lies in a civil day. A span of no length lies in its day as a whole. */
export function shareInDay(from: number, to: number, day: number): number {
  const [begin, end] = [day * DAY_MS, (day + 1) * DAY_MS];
  if (to <= from) return Number(from >= begin && from < end && to < Infinity);
  return Math.max(0, Math.min(to, end) - Math.max(from, begin)) / (to - from);
}

// The earliest animals were the oldest when found; a stage that a log saw begin was not begun before.
function doneAt({ forecast }: StandInSource, share: number): number {
  if (forecast.learned?.from != null) return 0;
  const { age } = forecast.found;
  return age.to - share * (age.to - age.from);
}

// Of the last larval stage only the part before the hang feeds.
function foodLeft({ lifeCycle, stage }: StandInSource, done: number): number {
  const { stages, hang } = lifeCycle;
  const larval = stages.filter((one) => one.stage === "larva" || one.stage.startsWith("instar-"));
  const feeds = hang !== null && larval.at(-1)?.stage === stage ? 1 - hang.value : 1;
  return Math.min(1, Math.max(0, (feeds - done) / feeds));
}

/**
 * When the animal began a stage of its order, as the clock on the wall shows it. The stage it was found in had
 * begun before the find, by as much as its age says; `-Infinity` where that cannot be told.
 */
export function beganAt({ begins, done }: StandIn, k: number): number {
  const [from, to] = [begins[k] ?? Infinity, begins[k + 1] ?? Infinity];
  if (k > 0 || done <= 0) return from;
  return done < 1 && to < Infinity ? to - (to - from) / (1 - done) : -Infinity;
}
