import type { LogEntry } from "../../cohort/log.ts";
import { dayNumber } from "../../time/civil-day.ts";
import {
  DAY_MS,
  type Instant,
  type Zone,
  endOfDay,
  noonOf,
  parseMoment,
  startOfDay,
} from "../../time/zone.ts";
import { type Moment, type Way, sharesAtPaces } from "../arrivals/done-by.ts";

/** The two looks between which a stage began. */
export interface Span {
  readonly from: Instant;
  readonly to: Instant;
}

/** The looks between which an entry says that its stage began. */
export function spanOfEntry({ on, notYet }: LogEntry, zone: Zone): Span {
  const { day, instant } = parseMoment(on, zone, ["log", "on"]);
  const to = instant ?? endOfDay(day, zone);
  if (notYet !== undefined) {
    const last = parseMoment(notYet, zone, ["log", "notYet"]);
    // A look on the day on which a later one found the stage: the middle of what there was of the day before it.
    const look = last.day === day ? (startOfDay(day, zone) + to) / 2 : noonOf(last.day, zone);
    return { from: last.instant ?? (instant === null ? noonOf(last.day, zone) : look), to };
  }
  // Without a time of day the look was some time on that day, and the one before it a day earlier.
  return { from: instant === null ? noonOf(dayNumber(day) - 1, zone) : instant - DAY_MS, to };
}

/** The chance that a milestone begins within a span, for each of some paces. */
export function chancesOf(
  { from, to }: Span,
  way: Pick<Way, "legs" | "sigma" | "starts">,
  paces: readonly number[],
): number[] {
  const [early, late] = [sharesAtPaces(way, paces, from), sharesAtPaces(way, paces, to)];
  return late.map((share, i) => share - (early[i] ?? 0));
}

// Nodes and weights of the three-point Gauss-Legendre rule on 0 to 1: a stage began somewhere in its span.
const WITHIN = [
  { share: 0.1127016653792583, weight: 5 / 18 },
  { share: 0.5, weight: 8 / 18 },
  { share: 0.8872983346207417, weight: 5 / 18 },
];

/** Where the animals of some entries start the stage from that they were seen to begin. */
export function startsFrom(kept: readonly { entry: LogEntry; span: Span }[]): Moment[] {
  const animals = kept.reduce((sum, { entry }) => sum + entry.count, 0);
  return kept.flatMap(({ entry, span }) =>
    WITHIN.map(({ share, weight }) => ({
      at: span.from + share * (span.to - span.from),
      weight: (weight * entry.count) / animals,
    })),
  );
}
