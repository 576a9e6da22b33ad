import type { RateProblem } from "./rate-problem.ts";
import { symmetricInverse } from "../../numeric/symmetric-inverse.ts";

type Problem = RateProblem<string>;

/** Lengths of the columns of a matrix of rows. */
export function columnNorms(rows: readonly (readonly number[])[]): number[] {
  return (rows[0] ?? []).map((_, j) => Math.sqrt(rows.reduce((sum, row) => sum + (row[j] ?? 0) ** 2, 0)));
}

/** Scaled rates seen less those of the model. */
export function residualsAt(problem: Problem, values: readonly number[]): number[] {
  return problem.fitted(values).map((fitted, i) => (problem.observed[i] ?? 0) - fitted);
}

/** -1 where a parameter stands at its least value, 1 at its greatest, 0 between. */
export function limitAt({ least, greatest }: Problem, values: readonly number[], j: number): -1 | 0 | 1 {
  const [value, low, high] = [values[j] ?? 0, least[j] ?? -Infinity, greatest[j] ?? Infinity];
  const crumb = 1e-9 * (high - low);
  return value - low <= crumb ? -1 : high - value <= crumb ? 1 : 0;
}

/** Indices of parameters that can move: not at a limit, or drawn away from it by the residuals. */
export function freeParameters(
  problem: Problem,
  values: readonly number[],
  jacobian: readonly (readonly number[])[],
): number[] {
  const residuals = residualsAt(problem, values);
  return values.flatMap((_, j) => {
    const limit = limitAt(problem, values, j);
    const along = jacobian.reduce((sum, row, i) => sum + (row[j] ?? 0) * (residuals[i] ?? 0), 0);
    return limit * along > 0 ? [] : [j];
  });
}

/** Columns of a matrix of rows that are wanted, each at unit length. */
function unitColumns(
  rows: readonly (readonly number[])[],
  wanted: readonly number[],
): {
  readonly scales: readonly number[];
  readonly scaled: readonly (readonly number[])[];
} {
  const chosen = rows.map((row) => wanted.map((j) => row[j] ?? 0));
  const scales = columnNorms(chosen);
  return { scales, scaled: chosen.map((row) => row.map((entry, j) => entry / (scales[j] ?? 1))) };
}

function normalInverse(scaled: readonly (readonly number[])[]): number[][] | null {
  const columns = scaled[0] ?? [];
  return symmetricInverse(
    columns.map((_, j) =>
      columns.map((__, k) => scaled.reduce((sum, row) => sum + (row[j] ?? 0) * (row[k] ?? 0), 0)),
    ),
  );
}

/**
 * The step of Gauss and Newton for the free parameters, and the share of the residuals' length that it would take
 * away if the curve were straight: 0 at a minimum. `null` where the parameters cannot be told apart.
 */
export function gaussNewton(
  problem: Problem,
  values: readonly number[],
): { readonly step: readonly number[]; readonly share: number } | null {
  const jacobian = problem.jacobian(values);
  const free = freeParameters(problem, values, jacobian);
  const residuals = residualsAt(problem, values);
  const { scales, scaled } = unitColumns(jacobian, free);
  if (scales.some((scale) => scale === 0)) return null;
  const inverse = normalInverse(scaled);
  if (inverse === null) return null;
  const along = free.map((_, j) =>
    scaled.reduce((sum, row, i) => sum + (row[j] ?? 0) * (residuals[i] ?? 0), 0),
  );
  const moves = inverse.map((row) => row.reduce((sum, entry, k) => sum + entry * (along[k] ?? 0), 0));
  const taken = moves.reduce((sum, move, j) => sum + move * (along[j] ?? 0), 0);
  const total = residuals.reduce((sum, residual) => sum + residual ** 2, 0);
  const step = values.map(() => 0);
  free.forEach((index, j) => {
    step[index] = (moves[j] ?? 0) / (scales[j] ?? 1);
  });
  return { step, share: total === 0 ? 0 : Math.sqrt(Math.max(0, taken) / total) };
}

/**
 * Standard errors of the parameters from the curvature at the minimum, or `null` where the trials do not tell the
 * parameters apart.
 * @param variance Residual variance of the scaled rates.
 */
export function standardErrors(
  problem: Problem,
  values: readonly number[],
  variance: number,
): number[] | null {
  const { scales, scaled } = unitColumns(
    problem.jacobian(values),
    values.map((_, j) => j),
  );
  if (scales.some((scale) => scale === 0)) return null;
  const inverse = normalInverse(scaled);
  const errors = inverse?.map((row, j) => Math.sqrt((row[j] ?? 0) * variance) / (scales[j] ?? 1));
  return errors?.every(Number.isFinite) === true ? errors : null;
}
