import { type LogEntry, checkLog } from "../../cohort/log.ts";
import { otherYear } from "../../cohort/other-year.ts";
import { sigmaOf } from "../../cohort/requirement.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import type { Note } from "../../notes.ts";
import type { StageId } from "../../species/life-cycle.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { formatInstant } from "../../time/zone.ts";
import type { Moment } from "../arrivals/done-by.ts";
import { type ForecastInput, startOf } from "../question/forecast-input.ts";
import { type Learned, beliefOf } from "../question/learned.ts";
import { lifePath } from "../question/life-path.ts";
import { animalsMissing } from "./animals-missing.ts";
import { type Seen, contradiction, notAhead } from "./kept-aside.ts";
import { spanOfEntry, startsFrom } from "./log-span.ts";
import {
  type GridNode,
  type PaceBelief,
  judged,
  priorGrid,
  refined,
  thinned,
  weighted,
} from "./pace-grid.ts";
import { type Sighting, type SightingChances, sightingChances } from "./sightings.ts";

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
 * The grid is made finer until it resolves what is left of the belief. Deterministic.
 * @param input As for `forecast`. Of a weather ensemble the first member counts: the log is of days gone by.
 * @param log What was seen, of one cohort. `notYet` of an entry is the last look without it; where it is
 *   missing, looks are taken as a day apart.
 * @returns Belief about the pace, and where the forecast is to go on from. Entries that cannot be are kept
 *   aside with the reason; nothing is dropped.
 * @throws {InputError} What `forecast` throws for the input; `invalid-option`; what `checkLog` throws.
 */
export function learn(input: ForecastInput, log: readonly LogEntry[], options: LearnOptions = {}): Learned {
  const prior = checkedOptions(options);
  const entries = checkLog(log);
  const start = startOf(input);
  const { lifeCycle, found } = input;
  const { zone, instant } = start;
  const stages = start.path.milestones.filter(({ kind }) => kind === "stage");
  const ahead = new Set<StageId | "darkening">(stages.map(({ id }) => id));
  const seen: Seen[] = [];
  const aside: { entry: LogEntry; reason: string }[] = [];
  for (const entry of entries) {
    const reason = notAhead(entry, ahead, found.stage);
    if (reason === null) seen.push({ entry, span: spanOfEntry(entry, zone) });
    else aside.push({ entry, reason });
  }

  const lastLook = Math.max(instant, ...seen.map(({ span }) => span.to));
  const chancesOn = sightingChances(pastOf(input.temperatures), lifeCycle, start, lastLook);
  let grid = priorGrid(prior);
  const sightings: Sighting[] = [];
  /** Whether a sighting can be, and if so the grid and the sightings with it. */
  const believe = (sighting: Sighting): boolean => {
    const chances = chancesOn(sighting, grid);
    const next = Math.max(...chances) < LEAST_CHANCE ? null : judged(grid, chances, sighting.animals);
    if (next === null) return false;
    grid = next;
    sightings.push(sighting);
    return true;
  };

  const used: LogEntry[] = [];
  let starts: readonly Moment[] = [{ at: instant, weight: 1 }];
  let { path } = start;
  let from: Learned["from"] = null;
  for (const milestone of stages) {
    const kept: Seen[] = [];
    for (const one of seen.filter(({ entry }) => entry.stage === milestone.id)) {
      const { entry, span } = one;
      if (believe({ span, milestone, starts, path, animals: entry.count })) kept.push(one);
      else aside.push({ entry, reason: contradiction(one, starts, from, instant, zone) });
    }
    if (kept.length === 0) continue;
    used.push(...kept.map(({ entry }) => entry));
    const { missing, begun } = animalsMissing(entries, stages, milestone, found.count);
    if (missing > 0) {
      const last = Math.max(...kept.map(({ span }) => span.to));
      believe({ span: { from: last, to: Infinity }, milestone, starts, path, animals: missing });
    }
    if (milestone.id === "adult" || milestone.id === "darkening") continue;
    starts = startsFrom(kept);
    path = lifePath(lifeCycle, milestone.id, "new");
    // While most are still in the stage before, the forecast goes on from there.
    if (begun < missing) continue;
    from = {
      stage: milestone.id,
      moments: starts.map(({ at, weight }) => ({ at: formatInstant(at, zone), weight })),
    };
  }

  const wrongYear = used.length === 0 ? otherYear(entries, found.on) : [];
  const nodes = weighted(resolved(grid, prior, sightings, chancesOn));
  return {
    pace: beliefOf(nodes.map(({ pace, weight }) => ({ value: pace, weight }))),
    offset:
      prior.deviation === 0 ? null : beliefOf(nodes.map(({ offset, weight }) => ({ value: offset, weight }))),
    nodes: thinned(nodes),
    from,
    used,
    aside,
    notes: wrongYear.length > 0 ? wrongYear : notesOn(aside, found.stage),
  };
}

/** That the found stage was logged too is no news; everything else that was kept aside is. */
function notesOn(aside: Learned["aside"], found: StageId): Note[] {
  return aside.flatMap(({ entry, reason }) =>
    entry.stage === found ? [] : [{ code: "log-kept-aside", message: reason }],
  );
}

function checkedOptions(options: LearnOptions): PaceBelief {
  given(options, ["options"], "an object of options");
  const { paceVariation = 0.1, offsetDeviation = 0 } = options;
  if (!(paceVariation > 0 && paceVariation < 1))
    throw refusedOption("paceVariation", paceVariation, "a share between 0 and 1, such as 0.1");
  if (!(offsetDeviation >= 0 && offsetDeviation < 20))
    throw refusedOption("offsetDeviation", offsetDeviation, "from 0 to below 20 °C");
  return { sigma: sigmaOf(paceVariation), deviation: offsetDeviation };
}

function refusedOption(option: keyof LearnOptions, value: unknown, expected: string): InputError {
  return new InputError(
    "invalid-option",
    (name) => `${name(option)} is ${shown(value)}; it must be ${expected}.`,
    { path: [option], value },
  );
}

/** The temperatures of days gone by, which all members of an ensemble share. */
function pastOf(temperatures: ForecastInput["temperatures"]): TemperatureSeries {
  const series = temperatures.kind === "ensemble" ? temperatures.groups[0]?.members[0] : temperatures;
  if (series !== undefined) return series;
  throw new InputError("no-temperatures", "the ensemble has no members.", { path: ["temperatures"] });
}

/** Below this chance at every pace an entry contradicts what came before it. */
const LEAST_CHANCE = 1e-6;

/** Each finer grid divides a step of the one before by four or more. */
const FINER_GRIDS = 6;

/** The belief on a grid fine enough for it: many animals leave little of the first one. */
function resolved(
  first: readonly GridNode[],
  prior: PaceBelief,
  sightings: readonly Sighting[],
  chancesOn: SightingChances,
): readonly GridNode[] {
  let grid = first;
  for (let left = FINER_GRIDS; left > 0; left--) {
    let next = refined(grid, prior);
    if (next === null) break;
    for (const sighting of sightings)
      next = next && judged(next, chancesOn(sighting, next), sighting.animals);
    if (next === null) break;
    grid = next;
  }
  return grid;
}
