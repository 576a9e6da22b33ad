import { InputError, finite } from "../errors.ts";
import { given } from "../given.ts";
import { knownSeries } from "../temperature/known-series.ts";
import type { TemperatureSeries } from "../temperature/series.ts";
import { type Instant, type Zone, formatInstant } from "../time/zone.ts";
import type { Arc } from "./arc.ts";
import { knownCurveMethod } from "./method.ts";
import { type PartSeries, type TimelineOptions, partArcs, pushClipped, spanOf } from "./part-arcs.ts";

/** Temperature over time from a start on, without a hole. */
export interface Timeline {
  /** In order, each beginning where the one before it ends. */
  readonly arcs: readonly Arc[];
  readonly from: Instant;
  readonly to: Instant;
  /** Why it ends: no temperatures after it, or a hole with more temperatures behind. */
  readonly endedBy: "series-ends" | "gap";
}

/**
 * The curve of a series from an instant on, up to its end or its first hole.
 * @throws {InputError} `start-outside-series` when no temperature covers the start, or
 *   `missing-temperature` when it falls into a hole; `zone-needed` when readings in UTC meet a local clock.
 */
export function timelineOf(series: TemperatureSeries, options: TimelineOptions): Timeline {
  knownSeries(series, ["series"]);
  given(options, ["options"], "an object of options", "method", "from", "limits");
  knownCurveMethod(options.method);
  finite(options.from, ["from"], "a time in milliseconds");
  const parts = series.kind === "joined" ? series.parts : [series];
  const arcs = parts.map((part) => partArcs(part, options)).reduce(fillHoles, []);
  const { from, zone } = options;
  const first = arcs[0];
  if (first === undefined || first.from > from) {
    const code =
      first === undefined || !coversBefore(parts, options) ? "start-outside-series" : "missing-temperature";
    throw new InputError(
      code,
      `the start is ${formatInstant(from, zone)}, but ${coverage(series, options, first)}.`,
      {
        path: ["start"],
        value: formatInstant(from, zone),
      },
    );
  }
  const hole = arcs.findIndex((arc, i) => i > 0 && arc.from !== arcs[i - 1]?.to);
  const whole = hole < 0 ? arcs : arcs.slice(0, hole);
  return { arcs: whole, from, to: whole.at(-1)?.to ?? from, endedBy: hole < 0 ? "series-ends" : "gap" };
}

function coversBefore(parts: readonly PartSeries[], { from, zone }: TimelineOptions): boolean {
  return parts.some((part) => spanOf(part, zone)[0] <= from);
}

function coverage(series: TemperatureSeries, { zone, from }: TimelineOptions, next: Arc | undefined): string {
  const spans = (series.kind === "joined" ? series.parts : [series]).map((part) => spanOf(part, zone));
  const first = Math.min(...spans.map(([begin]) => begin));
  const last = Math.max(...spans.map(([, end]) => end));
  if (first > from || last <= from) {
    return `the temperatures run from ${edgeText(first, zone)} to ${edgeText(last, zone, true)}; give temperatures for the start, or start between these`;
  }
  return `there is no temperature for it${next ? ` before ${formatInstant(next.from, zone)}` : ""}; fill the gap or start elsewhere`;
}

/** An end of a series: a day where it lies on midnight (the day before, for the last), else a time. */
function edgeText(instant: Instant, zone: Zone, last = false): string {
  if (!Number.isFinite(instant)) return instant < 0 ? "ever" : "for ever";
  const text = formatInstant(last ? instant - 1000 : instant, zone);
  return text.slice(11, 19) === (last ? "23:59:59" : "00:00:00")
    ? text.slice(0, 10)
    : formatInstant(instant, zone).slice(0, 16).replace("T", " ");
}

/** Arcs of a first series with the holes filled from a second one. */
function fillHoles(base: readonly Arc[], filler: readonly Arc[]): Arc[] {
  if (base.length === 0) return [...filler];
  const filled: Arc[] = [];
  let next = 0;
  let from = -Infinity;
  for (let i = 0; i <= base.length; i++) {
    const here = base[i];
    const to = here?.from ?? Infinity;
    if (to > from) {
      // An arc of the filler can reach past this hole into the next: step on only when it ends before.
      while (next < filler.length) {
        const arc = filler[next];
        if (arc === undefined || arc.from >= to) break;
        pushClipped(filled, arc, from, to);
        if (arc.to > to) break;
        next++;
      }
    }
    if (here !== undefined) {
      filled.push(here);
      from = here.to;
    }
  }
  return filled;
}
