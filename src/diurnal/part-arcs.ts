import { InputError } from "../errors.ts";
import { isMissing } from "../temperature/gaps.ts";
import type {
  ConstantTemperature,
  DailyTemperatures,
  JoinedTemperatures,
  TemperatureReadings,
} from "../temperature/series.ts";
import { dayNumber } from "../time/civil-day.ts";
import {
  DAY_MS,
  HOUR_MS,
  type Instant,
  type Zone,
  endOfDay,
  formatInstant,
  instantsAt,
  startOfDay,
} from "../time/zone.ts";
import { type Arc, DrawnArc } from "./arc.ts";
import { type DayPlace, dayArcs } from "./day-arcs.ts";
import { type CurveMethod, isSunMethod } from "./method.ts";
import type { Place } from "./place.ts";
import { type Extremes, type SunContext, placeForSun, sunArcs } from "./sun-arcs.ts";

/** How a series becomes a curve. */
export interface TimelineOptions {
  readonly method: CurveMethod;
  readonly zone: Zone;
  readonly from: Instant;
  /** Where it is, for the methods that follow the sun; they need a zone too. */
  readonly place?: Place | null;
  /** Where to stop drawing. Default: the end of the series. */
  readonly until?: Instant;
  /** Thresholds, for the methods that clamp. */
  readonly limits: { readonly lower: number; readonly upper: number };
}

/** How far a temperature without a last day is followed: a hundred years. */
const FOREVER_MS = 36_525 * DAY_MS;

/** A series that is not joined from others. */
export type PartSeries = JoinedTemperatures["parts"][number];

/** Arcs of one series from the start on, in order; where readings are missing, so are arcs. */
export function partArcs(part: PartSeries, options: TimelineOptions): Arc[] {
  switch (part.kind) {
    case "daily":
      return dailyArcs(part, options);
    case "readings":
      return readingArcs(part, options);
    case "constant":
      return constantArcs(part, options);
  }
}

function dailyArcs(series: DailyTemperatures, options: TimelineOptions): Arc[] {
  const { zone, from, until = Infinity } = options;
  const first = dayNumber(series.start);
  const arcs: Arc[] = [];
  // A day before the start may still be running at it: zones are less than a day apart.
  const skipped = Math.max(0, Math.floor(from / DAY_MS) - first - 1);
  let midnight = startOfDay(first + skipped, zone);
  const draw = drawerOf(options, midnight);
  let [previous, today] = [extremesOn(series, skipped - 1), extremesOn(series, skipped)];
  for (let i = skipped; i < series.min.length && midnight < until; i++) {
    const nextMidnight = startOfDay(first + i + 1, zone);
    const next = extremesOn(series, i + 1);
    if (today !== null && nextMidnight > from) {
      const days = { previous, today, next };
      const span = { from: midnight, to: nextMidnight, origin: series.origin[i] ?? "observed" };
      for (const arc of draw(days, span)) pushClipped(arcs, arc, Math.max(from, midnight), nextMidnight);
    }
    midnight = nextMidnight;
    previous = today;
    today = next;
  }
  return arcs;
}

/** How a method draws a civil day, which it may overstep. */
function drawerOf(
  { method, zone, place = null, limits }: TimelineOptions,
  midnight: Instant,
): (days: SunContext, span: DayPlace) => Arc[] {
  if (isSunMethod(method)) {
    const checked = placeForSun(method, place, zone, midnight);
    return (days, span) => sunArcs(method, days, span, checked);
  }
  return ({ previous, today, next }, span) => {
    const { min, max } = today;
    const context = { min, max, previousMax: previous?.max ?? max, nextMin: next?.min ?? min };
    return dayArcs(method, context, span, limits);
  };
}

function extremesOn(series: DailyTemperatures, i: number): Extremes | null {
  const [min, max] = [series.min[i] ?? Number.NaN, series.max[i] ?? Number.NaN];
  return isMissing(series, i) ? null : { min, max };
}

function readingArcs(series: TemperatureReadings, { zone, from, until = Infinity }: TimelineOptions): Arc[] {
  const at = instantsOf(series, zone);
  const arcs: Arc[] = [];
  for (let i = 1; i < at.length; i++) {
    const [begin, end] = [at[i - 1] ?? 0, at[i] ?? 0];
    if (begin >= until) break;
    if (end <= from || end - begin > series.longestGapHours * HOUR_MS) continue;
    const [start, stop] = [series.temperature[i - 1] ?? 0, series.temperature[i] ?? 0];
    const { origin } = series;
    const arc = new DrawnArc({ shape: "line", start, end: stop, u0: 0, u1: 1, from: begin, to: end, origin });
    pushClipped(arcs, arc, from, Infinity);
  }
  return arcs;
}

function constantArcs(series: ConstantTemperature, { zone, from }: TimelineOptions): Arc[] {
  const [begin, end] = spanOf(series, zone);
  const arcs: Arc[] = [];
  const { temperature } = series;
  const span = { from: Math.max(begin, from), to: Math.min(end, from + FOREVER_MS) };
  pushClipped(
    arcs,
    new DrawnArc({
      shape: "line",
      start: temperature,
      end: temperature,
      u0: 0,
      u1: 1,
      ...span,
      origin: "assumed",
    }),
    from,
    Infinity,
  );
  return arcs;
}

/** Times of readings on the axis that the zone sets. */
function instantsOf(series: TemperatureReadings, zone: Zone): Float64Array {
  if (series.clock === "utc") {
    if (zone !== null) return series.at;
    throw new InputError(
      "zone-needed",
      (name) =>
        `the readings count in UTC, but no time zone was given; name the zone that the dates are in with ${name("zone")}, such as America/New_York.`,
      { path: ["zone"], value: zone },
    );
  }
  if (zone === null) return series.at;
  return series.at.map((local, i) => {
    const [instant] = instantsAt(local, zone);
    if (instant !== undefined) return instant;
    throw new InputError(
      "invalid-instant",
      `reading ${i} is at ${formatInstant(local, null)}, a time that clocks in ${zone} skipped; give the zone or offset that the logger's clock kept.`,
      { path: ["at", i], value: local },
    );
  });
}

/** First and last instant that a series covers, holes included. */
export function spanOf(part: PartSeries, zone: Zone): [Instant, Instant] {
  switch (part.kind) {
    case "daily": {
      const first = dayNumber(part.start);
      return [startOfDay(first, zone), startOfDay(first + part.min.length, zone)];
    }
    case "readings": {
      const at = instantsOf(part, zone);
      return [at[0] ?? 0, at.at(-1) ?? 0];
    }
    case "constant":
      return [
        part.from === null ? -Infinity : startOfDay(part.from, zone),
        part.to === null ? Infinity : endOfDay(part.to, zone),
      ];
  }
}

/** Adds the part of an arc that lies between two instants, if any. */
export function pushClipped(arcs: Arc[], arc: Arc, from: Instant, to: Instant): void {
  const begin = Math.max(arc.from, from);
  const end = Math.min(arc.to, to);
  if (!(begin < end)) return;
  if (begin === arc.from && end === arc.to) {
    arcs.push(arc);
    return;
  }
  const perMs = (arc.u1 - arc.u0) / (arc.to - arc.from);
  const u0 = begin === arc.from ? arc.u0 : arc.u0 + (begin - arc.from) * perMs;
  const u1 = end === arc.to ? arc.u1 : arc.u1 - (arc.to - end) * perMs;
  arcs.push(new DrawnArc({ ...arc, from: begin, to: end, u0, u1 }));
}
