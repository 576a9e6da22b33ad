import { InputError } from "../../errors.ts";
import { givenList } from "../../given.ts";
import type { HindcastRun } from "./hindcast.ts";
import { bias, coverage, crps, meanAbsoluteError, skill } from "./scores.ts";

/** How forecasts at one lead did. Days throughout. */
export interface LeadScores {
  /** Days of observed temperatures when the forecast was made. */
  readonly lead: number;
  /** Runs, none left out: scored and beyond the record. */
  readonly runs: number;
  /** Runs whose truth is known. */
  readonly scored: number;
  /** Runs that the record ends before; their truth is not known. */
  readonly beyondRecord: number;
  /** Of these, runs whose window closed before the record ended, and so were wrong. */
  readonly closedTooEarly: number;
  /** Mean of observed less expected. */
  readonly biasDays: number;
  readonly meanAbsoluteErrorDays: number;
  readonly crpsDays: number;
  /** Share of runs inside the window that is to hold 80 %. */
  readonly coverage: number;
  /** 1 less the ratio of mean absolute errors: against the usual number of days. */
  readonly skillOnUsualDays: number;
  /** 1 less the ratio of CRPS: against past years alone, nothing observed. */
  readonly skillOnClimatology: number;
}

/**
 * Scores of hindcasts by lead, for those that start in some months.
 * The usual number of days is the mean over the runs of other years that start in the same month, as somebody
 * who has kept notes would say it. Climatology is the forecast at lead 0.
 * @param runs What `hindcast` returned, with lead 0 among the leads.
 * @param months Months of the starts to be scored, 1 to 12. Default: all.
 * @param horizon Times beyond it, and times that never come, count as this many days. Default 400.
 */
export function scoreHindcast(
  runs: readonly HindcastRun[],
  months: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
  horizon = 400,
): LeadScores[] {
  givenList(runs, ["runs"]);
  givenList(months, ["months"]);
  const within = runs.filter(({ start }) => months.includes(Number(start.slice(5, 7))));
  const usual = usualDays(runs);
  const scoredRuns = within.filter(({ truth }) => truth !== null);
  const lonely = scoredRuns.find(({ start }) => Number.isNaN(usual(start)));
  if (scoredRuns.length === 0 || lonely !== undefined) {
    const start = lonely?.start ?? within[0]?.start;
    throw new InputError(
      "too-few-readings",
      start === undefined || lonely === undefined
        ? "no run of these months became adult within the record; give more runs, or other months."
        : `no other year has a run at lead 0 that starts in the month of ${start} and becomes adult; give runs of more starts.`,
      { path: ["runs"], value: start },
    );
  }
  const leads = [...new Set(within.map(({ lead }) => lead))].sort((a, b) => a - b);
  const capped = (time: number): number => Math.min(time, horizon);
  const scoreOf = (run: HindcastRun): number => crps(run.forecast.map(capped), capped(run.truth ?? horizon));
  const climatology = new Map(
    within.filter((run) => run.lead === 0 && run.truth !== null).map((run) => [run.start, scoreOf(run)]),
  );
  return leads.map((lead) => {
    const here = within.filter((run) => run.lead === lead);
    const scored = here.filter((run) => run.truth !== null);
    const beyond = here.filter((run) => run.truth === null);
    const truths = scored.map((run) => capped(run.truth ?? horizon));
    const middles = scored.map((run) => capped(pointOf(run.forecast, 0.5)));
    const windows = scored.map(({ forecast }) => ({
      lower: capped(pointOf(forecast, 0.1)),
      upper: capped(pointOf(forecast, 0.9)),
    }));
    const scores = scored.map(scoreOf);
    const error = meanAbsoluteError(middles, truths);
    return {
      lead,
      runs: here.length,
      scored: scored.length,
      beyondRecord: beyond.length,
      closedTooEarly: beyond.filter(({ forecast, recordEnds }) => pointOf(forecast, 0.9) < recordEnds).length,
      biasDays: bias(middles, truths),
      meanAbsoluteErrorDays: error,
      crpsDays: mean(scores),
      coverage: coverage(windows, truths),
      skillOnUsualDays: skill(
        error,
        meanAbsoluteError(
          scored.map((run) => usual(run.start)),
          truths,
        ),
      ),
      skillOnClimatology: skill(
        mean(scores),
        mean(scored.map((run) => climatology.get(run.start) ?? Number.NaN)),
      ),
    };
  });
}

/** The time that a share of equally weighted ones does not exceed. */
function pointOf(times: readonly number[], share: number): number {
  return times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? Number.NaN;
}

/** Mean number of days from starts in the same month of other years. */
function usualDays(runs: readonly HindcastRun[]): (start: string) => number {
  const once = runs.filter((run) => run.lead === 0 && run.truth !== null);
  const sums = new Map<string, { sum: number; count: number }>();
  for (const { start, truth } of once) {
    const key = start.slice(0, 7);
    const { sum, count } = sums.get(key) ?? { sum: 0, count: 0 };
    sums.set(key, { sum: sum + (truth ?? 0), count: count + 1 });
  }
  return (start) => {
    let [sum, count] = [0, 0];
    for (const [key, month] of sums) {
      if (key.slice(5) !== start.slice(5, 7) || key.slice(0, 4) === start.slice(0, 4)) continue;
      sum += month.sum;
      count += month.count;
    }
    return sum / count;
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, one) => sum + one, 0) / values.length;
}
