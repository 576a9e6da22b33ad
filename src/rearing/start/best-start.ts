import { forecast } from "../../forecast/forecast.ts";
import type { ForecastInput } from "../../forecast/question/forecast-input.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import type { Window } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import type { Odds, Scored, StartAbsence } from "./start-plan.ts";

/** Below one in a thousand nobody should be sent to wait. */
const LEAST_CHANCE = 0.001;

/** Starts from the best to the worst; those without odds come last. Ties keep their order. */
export function ranked<Start>(starts: readonly Scored<Start>[]): Scored<Start>[] {
  const rank = ({ odds }: Scored<Start>): readonly [number, number] =>
    odds === null ? [-1, -1] : [odds.chance, odds.each];
  return [...starts].sort((a, b) => {
    const [[chanceA, eachA], [chanceB, eachB]] = [rank(a), rank(b)];
    return chanceB - chanceA || eachB - eachA;
  });
}

/** The best start with its odds, or why none can be advised. */
export function bestOf<Start extends object>(
  starts: readonly Scored<Start>[],
  words: { readonly earlier: string; readonly later: string },
): { best: Scored<Start> & { odds: Odds }; absence: null } | { best: null; absence: StartAbsence } {
  const [best] = ranked(starts);
  if (best === undefined) {
    return { best: null, absence: { reason: "out-of-reach", message: "There is no start to choose from." } };
  }
  if (best.odds === null) return { best: null, absence: best.absence };
  if (best.odds.chance >= LEAST_CHANCE) return { best, absence: null };
  const odds = starts.flatMap((start) => start.odds ?? []);
  const message = odds.every(({ late }) => late > 0.5)
    ? `Every one of these starts leads to a later time; ${words.earlier}.`
    : odds.every(({ early }) => early > 0.5)
      ? `Every one of these starts leads to an earlier time; ${words.later}.`
      : "Some of these starts are too early and the others too late: none of them hits this time.";
  return { best: null, absence: { reason: "out-of-reach", message } };
}

/** When a start leads to the milestone, and what a forecast has to say about it. */
export function outlookOf(
  input: ForecastInput,
  milestone: MilestoneId,
): { window: Window; notes: readonly Note[] } {
  const result = forecast(input);
  const part =
    result.stages.find(({ stage }) => stage === milestone) ??
    result.signs.find(({ sign }) => sign === milestone);
  const window = part?.begins ?? { early: null, expected: null, late: null };
  // What is missing after the wanted day is no loss here.
  const notes =
    part?.absence == null ? result.notes.filter(({ code }) => code !== "series-ends-first") : result.notes;
  return { window, notes };
}
