import { type LogEntry, checkLog, fateOf } from "../../cohort/log.ts";
import { otherYear } from "../../cohort/other-year.ts";
import { sigmaOf } from "../../cohort/requirement.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import type { Note } from "../../notes.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { DAY_MS, type Instant, type Zone, formatInstant } from "../../time/zone.ts";
import { animalsMissing } from "./animals-missing.ts";
import type { Moment } from "../arrivals/done-by.ts";
import { type ForecastInput, startOf } from "../question/forecast-input.ts";
import { type Learned, beliefOf } from "../question/learned.ts";
import { type Milestone, lifePath } from "../question/life-path.ts";
import { type Span, chancesOf, spanOfEntry, startsFrom } from "./log-span.ts";
import { normalised, priorGrid, thinned } from "./pace-grid.ts";
import { USUAL_PACE, waysTo } from "../arrivals/scenario.ts";
import { type StageClock, clocksOn, curveOf } from "../clocks/stage-clock.ts";

/** What is believed before the log, and how the log was kept. */
export interface LearnOptions {
  /**
   * How much cohorts differ in what they need, a coefficient of variation. Default 0.1: hosts and populations
   * differ by 10 to 15 % (common practice, no source).
   */
  readonly paceVariation?: number;
  /**
   * How far the animals' temperature may be off the temperatures given, one standard deviation in °C. Default 0:
   * the thermometer stands with the animals.
   */
  readonly offsetDeviation?: number;
}

/**
 * What a log teaches about a cohort: whether it runs slower or faster than the constants say, and, if asked,
 * whether it is warmer or colder than the thermometer says.
 *
 * Each entry says that a stage began between two looks. It is held against the stage logged before it, or
 * the find where there is none, so that each entry adds what it alone knows; the belief in each pace (and
 * offset) of a grid is multiplied by the chance of the entry. Animals of one entry are taken as independent
 * of each other, given the pace. Animals of the find that were not logged in a stage had not begun it at the
 * last look at which others had, unless a later stage has more animals, which shows that lines are missing.
 * Deterministic.
 * @param input As for `forecast`. Of a weather ensemble the first member counts: the log is of days gone by.
 * @param log What was seen, of one cohort. `notYet` of an entry is the last look without it; where it is
 *   missing, looks are taken as a day apart.
 * @returns Belief about the pace, and where the forecast is to go on from. Entries that cannot be are kept
 *   aside with the reason; nothing is dropped.
 * @throws {InputError} What `forecast` throws for the input; `invalid-option`; what `checkLog` throws.
 */
export function learn(input: ForecastInput, log: readonly LogEntry[], options: LearnOptions = {}): Learned {
  given(options, ["options"], "an object of options");
  const { paceVariation = 0.1, offsetDeviation = 0 } = options;
  if (!(paceVariation > 0 && paceVariation < 1 && offsetDeviation >= 0 && offsetDeviation < 20)) {
    throw new InputError(
      "invalid-option",
      (name) =>
        `${name("paceVariation")} is ${shown(paceVariation)} and ${name("offsetDeviation")} ${shown(offsetDeviation)}; the first must be between 0 and 1, the second from 0 to below 20 °C.`,
      { path: ["paceVariation"], value: paceVariation },
    );
  }
  const entries = checkLog(log);
  const { zone, method, place, path, instant } = startOf(input);
  const { lifeCycle } = input;
  const series =
    input.temperatures.kind === "ensemble" ? input.temperatures.groups[0]?.members[0] : input.temperatures;
  if (series === undefined)
    throw new InputError("no-temperatures", "the ensemble has no members.", { path: ["temperatures"] });

  let grid = priorGrid(sigmaOf(paceVariation), offsetDeviation);
  const offsets = [...new Set(grid.map(({ offset }) => offset))];
  const stages = path.milestones.filter(({ kind }) => kind === "stage");
  const ahead = new Set<StageId | "darkening">(stages.map(({ id }) => id));
  const spans = new Map(
    entries
      .filter((entry) => fateOf(entry) === "seen" && ahead.has(entry.stage))
      .map((entry) => [entry, spanOfEntry(entry, zone)]),
  );
  const lastLook = Math.max(instant, ...[...spans.values()].map(({ to }) => to));
  const clocksUntil = (until: Instant): (StageClock | null)[][] => {
    const curve = curveOf(series, { method, place, zone, from: instant, until });
    return offsets.map((offset) => clocksOn(curve, lifeCycle, path, offset));
  };
  const clocks = clocksUntil(lastLook + DAY_MS);
  // Whether an animal is still to come is asked of all temperatures, and seldom.
  let allClocks: typeof clocks | null = null;
  // The chance of a span at each point of the grid, which runs through the offsets and through the paces of each.
  const chancesIn = (span: Span, milestone: Milestone): number[] =>
    (span.to === Infinity ? (allClocks ??= clocksUntil(Infinity)) : clocks).flatMap((some, i) => {
      const paces = grid.filter(({ offset }) => offset === offsets[i]).map(({ pace }) => pace);
      const scenario = { weight: 1, paces: USUAL_PACE, starts, path: startPath, clocks: some };
      return waysTo(milestone, [scenario], lifeCycle).flatMap((way) => chancesOf(span, way, paces));
    });
  const used: LogEntry[] = [];
  const aside: { entry: LogEntry; reason: string }[] = [];
  let starts: Moment[] = [{ at: instant, weight: 1 }];
  let startPath = path;
  let from: Learned["from"] = null;
  for (const entry of entries) {
    const reason = notAhead(entry, ahead, input.found.stage);
    if (reason !== null) aside.push({ entry, reason });
  }

  for (const milestone of stages) {
    const here = entries.filter((entry) => entry.stage === milestone.id && fateOf(entry) === "seen");
    const kept: { entry: LogEntry; span: Span }[] = [];
    for (const entry of here) {
      const span = spans.get(entry) ?? spanOfEntry(entry, zone);
      const chances = chancesIn(span, milestone);
      if (Math.max(...chances) < LEAST_CHANCE) {
        aside.push({ entry, reason: contradiction(entry, span, starts, from, instant, zone) });
        continue;
      }
      grid = normalised(
        grid.map((node, i) => ({ ...node, weight: node.weight * (chances[i] ?? 0) ** entry.count })),
      );
      kept.push({ entry, span });
    }
    used.push(...kept.map(({ entry }) => entry));
    if (kept.length === 0) continue;
    const { missing, begun } = animalsMissing(entries, stages, milestone, input.found.count);
    if (missing > 0) {
      const last = Math.max(...kept.map(({ span }) => span.to));
      const waiting = chancesIn({ from: last, to: Infinity }, milestone);
      if (Math.max(...waiting) >= LEAST_CHANCE)
        grid = normalised(
          grid.map((node, i) => ({ ...node, weight: node.weight * (waiting[i] ?? 0) ** missing })),
        );
    }
    if (milestone.id === "adult" || milestone.id === "darkening") continue;
    starts = startsFrom(kept);
    startPath = lifePath(lifeCycle, milestone.id, "new");
    // While most are still in the stage before, the forecast goes on from there.
    if (begun < missing) continue;
    from = {
      stage: milestone.id,
      moments: starts.map(({ at, weight }) => ({ at: formatInstant(at, zone), weight })),
    };
  }
  const nodes = thinned(grid);
  const wrongYear = used.length === 0 ? otherYear(entries, input.found.on) : [];
  return {
    pace: beliefOf(grid.map(({ pace, weight }) => ({ value: pace, weight }))),
    offset:
      offsetDeviation === 0 ? null : beliefOf(grid.map(({ offset, weight }) => ({ value: offset, weight }))),
    nodes,
    from,
    used,
    aside,
    notes:
      wrongYear.length > 0
        ? wrongYear
        : aside
            // That the found stage was logged too is no news.
            .filter(({ entry }) => entry.stage !== input.found.stage)
            .map(({ reason }): Note => ({ code: "log-kept-aside", message: reason })),
  };
}

/** Below this chance at every pace an entry contradicts what came before it. */
const LEAST_CHANCE = 1e-6;

function notAhead(entry: LogEntry, ahead: ReadonlySet<StageId | "darkening">, found: StageId): string | null {
  const what = `${stageName(entry.stage)}, ${entry.on}`;
  const fate = fateOf(entry);
  if (fate !== "seen")
    return `${what}: ${fate === "died" ? "a death" : "a loss"} says nothing of the pace; the entry counts for survival only.`;
  return ahead.has(entry.stage)
    ? null
    : `${what}: the animals were found as ${stageName(found)}, so this stage is not ahead of them.`;
}

function contradiction(
  entry: LogEntry,
  span: Span,
  starts: readonly Moment[],
  from: Learned["from"],
  found: Instant,
  zone: Zone,
): string {
  const early = span.to <= found;
  const earliest = early ? found : Math.min(...starts.map(({ at }) => at));
  const before = from === null || early ? "the find" : `the ${stageName(from.stage)}`;
  const what = `${stageName(entry.stage)}, ${entry.on}${entry.row === null ? "" : ` (row ${entry.row})`}`;
  const since = formatInstant(earliest, zone).slice(0, 10);
  return span.to <= earliest
    ? `${what}: this is before ${before} (${since}); one of the two dates must be wrong. The entry is kept aside.`
    : `${what}: at these temperatures no animal goes from ${before} (${since}) to this stage in ${((span.to - earliest) / DAY_MS).toFixed(1)} days, even at an unusual pace. Check the dates and the temperatures. The entry is kept aside.`;
}
