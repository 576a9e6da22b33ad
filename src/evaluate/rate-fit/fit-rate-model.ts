import { greatest } from "../../numeric/extremes.ts";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { InputError, finite } from "../../errors.ts";
import { given, givenList } from "../../given.ts";
import type { Note } from "../../notes.ts";
import { type RateModel, type RateParameters, checkParameters } from "../../response/rate-model.ts";
import { correctedAkaike } from "./akaike.ts";
import { columnNorms, freeParameters, gaussNewton, limitAt, standardErrors } from "./fit-precision.ts";
import { fitNotes } from "./fit-notes.ts";
import { type RateProblem, rateProblem } from "./rate-problem.ts";
import { type Trial, trialColumns } from "../threshold/trial.ts";

/** A rate model fitted to trials. */
export interface RateFit<Name extends string = string> {
  readonly model: string;
  readonly parameters: RateParameters<Name>;
  /** Of the parameters, in their units; `null` where the trials do not tell them apart, with a note. */
  readonly standardErrors: RateParameters<Name> | null;
  /** Weighted residual sum of squares of the rates, per day². */
  readonly rss: number;
  /** Corrected Akaike criterion; `null` with too few trials for it or a fit without residuals. */
  readonly aicc: number | null;
  /** Observed less fitted rate, per day, in the order of the trials. */
  readonly residuals: readonly number[];
  /** Whether no step could take away more than a hundred-thousandth of the length of the residuals. */
  readonly converged: boolean;
  /** Steps tried from all starts. */
  readonly iterations: number;
  readonly notes: readonly Note[];
}

/** Options of {@link fitRateModel}. */
export interface RateFitOptions<Name extends string = string> {
  /** Where to begin. Default: the model's own grid, of which the best six are followed. */
  readonly starts?: readonly RateParameters<Name>[];
  /** Most steps from one start. Default 500. */
  readonly maxIterations?: number;
}

/**
 * Fits a rate model to trials at constant temperatures by least squares on the rates, 1/days, after Levenberg and
 * Marquardt. The same trials always give the same fit. Limits of the curve stay outside the tested temperatures,
 * because what developed there was inside them; that nothing developed, a rate of 0, cannot be given.
 * @param trials Temperatures in °C, days; at least as many different temperatures as the model has parameters.
 * @param model One of the models. @param options Starts and effort.
 * @returns Best fit of all starts. Not converging is told by `converged` and a note, not by an error.
 * @throws {InputError} `invalid-number` for temperatures, days or weights that are none; `invalid-trials` for too
 *   few different temperatures; `invalid-option` for an empty list of starts; what `rateFunction` throws for them.
 * @example
 * fitRateModel([12, 18, 24, 30, 33].map((t) => ({ temperature: t, days: 1 / rateFunction(briere1, { a: 1e-4, lower: 8, upper: 36 })(t) })), briere1).parameters.upper.toFixed(6) // → "36.000000"
 * @see Marquardt, D. W. (1963), J. Soc. Ind. Appl. Math. 11, 431-441 (from memory).
 */
export function fitRateModel<Name extends string>(
  trials: readonly Trial[],
  model: RateModel<Name>,
  options: RateFitOptions<Name> = {},
): RateFit<Name> {
  given(model, ["model"], "a rate model, such as briere1", "parameters", "rate", "guess");
  given(options, ["options"], "an object of options");
  const { starts, maxIterations = 500 } = options;
  finite(maxIterations, ["maxIterations"], "a number of steps");
  const count = model.parameters.length;
  const columns = trialColumns(
    trials,
    count,
    `${model.id} has ${count} parameters and needs at least as many temperatures`,
  );
  if (starts !== undefined) givenList(starts, ["starts"]);
  if (starts?.length === 0) {
    throw new InputError(
      "invalid-option",
      "starts is an empty list; give one set of parameters or leave it out.",
      {
        path: ["starts"],
        value: starts,
      },
    );
  }
  starts?.forEach((start) => checkParameters(model, start));
  const problem = rateProblem(model, columns, { starts, coordinates: "search" });
  const best = bestOfStarts(problem, maxIterations);
  const rss = best.cost * problem.unit;
  const n = trials.length;
  const atLimit = model.parameters.filter((_, j) => limitAt(problem, best.values, j) !== 0);
  const exact = best.cost <= n * EXACT;
  const parameters = problem.named(best.values);
  const own = rateProblem(model, columns, { coordinates: "parameters" });
  const errors =
    n > count && atLimit.length === 0
      ? standardErrors(own, own.vector(parameters), best.cost / (n - count))
      : null;
  const fault = model.fault(parameters);
  const converged = best.converged && fault === null;
  return {
    model: model.id,
    parameters,
    standardErrors: errors === null ? null : own.named(errors),
    rss,
    aicc: exact ? null : correctedAkaike(rss, n, count + 1),
    residuals: columns.temperatures.map((t, i) => (columns.rates[i] ?? 0) - model.rate(t, parameters)),
    converged,
    iterations: best.iterations,
    notes: fitNotes({
      n,
      count,
      exact,
      atLimit: atLimit.map(({ name }) => name),
      errors,
      converged,
      fault,
      optimum: model.optimum(parameters),
      hottest: greatest(columns.temperatures),
    }),
  };
}

interface Followed {
  readonly values: readonly number[];
  readonly cost: number;
  readonly converged: boolean;
  readonly iterations: number;
}

const FOLLOWED = 6;

/** Mean squared scaled residual below which a fit is exact: rounding of the rates. */
const EXACT = 1e-26;

/** Share of the residuals' length that a further step could take away, below which a fit has settled. */
const SETTLED = 1e-5;

function bestOfStarts<Name extends string>(problem: RateProblem<Name>, maxIterations: number): Followed {
  const ranked = problem.starts
    .map((values) => ({ values, cost: problem.cost(values) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, FOLLOWED)
    .map(({ values }) => follow(problem, values, maxIterations));
  const iterations = ranked.reduce((sum, one) => sum + one.iterations, 0);
  return { ...ranked.reduce((best, one) => (one.cost < best.cost ? one : best)), iterations };
}

/**
 * Follows the costs down from one start. The package takes every step it computes, better or worse, its weights mean
 * one thing in the step and another in the cost, and it does not say whether it converged. So it is asked for one
 * unweighted step at a time, in parameters scaled by their own influence, and the damping is kept here.
 */
function follow<Name extends string>(
  problem: RateProblem<Name>,
  start: readonly number[],
  maxIterations: number,
): Followed {
  const { least, greatest, observed } = problem;
  let [values, cost, damping, iterations] = [start, problem.cost(start), 1e-3, 0];
  let jacobian = problem.jacobian(values);
  while (iterations < maxIterations && damping < 1e12 && cost > 0) {
    iterations++;
    const free = freeParameters(problem, values, jacobian);
    if (free.length === 0) break;
    const rows = jacobian.map((row) => free.map((j) => row[j] ?? 0));
    const scales = columnNorms(rows).map((norm) => (norm > 0 ? norm : 1));
    const inner = (list: readonly number[]): number[] =>
      free.map((j, k) => (list[j] ?? 0) * (scales[k] ?? 1));
    const outer = (point: readonly number[]): number[] => {
      const moved = [...values];
      free.forEach((j, k) => {
        const value = (point[k] ?? Number.NaN) / (scales[k] ?? 1);
        moved[j] = Math.min(greatest[j] ?? value, Math.max(least[j] ?? value, value));
      });
      return moved;
    };
    const step = levenbergMarquardt(
      { x: observed.map((_, i) => i), y: [...observed] },
      (point) => {
        const curve = problem.fitted(outer(point));
        return (i) => curve[i] ?? Number.NaN;
      },
      {
        initialValues: inner(values),
        minValues: inner(least),
        maxValues: inner(greatest),
        jacobianFunction: () => (i) => (rows[i] ?? []).map((entry, k) => entry / (scales[k] ?? 1)),
        damping,
        maxIterations: 1,
        errorTolerance: 0,
      },
    );
    const next = outer(step.parameterValues);
    const nextCost = problem.cost(next);
    if (nextCost < cost) {
      [values, cost, damping] = [next, nextCost, Math.max(damping / 10, 1e-10)];
      jacobian = problem.jacobian(values);
    } else {
      damping *= 10;
    }
  }
  const share = gaussNewton(problem, values)?.share ?? Infinity;
  const converged = cost <= observed.length * EXACT || share < SETTLED;
  return { values, cost, converged, iterations };
}
