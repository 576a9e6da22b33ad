import { greatest } from "./extremes.ts";
/** A line that was fitted so that single odd points do not pull it. */
export interface HuberLine {
  /** Value at x = 0; 0 for a line through the origin. */
  readonly intercept: number;
  readonly slope: number;
  /** Variances and covariance of the two, in the square of the unit of y (and per unit of x). */
  readonly interceptVariance: number;
  readonly slopeVariance: number;
  readonly covariance: number;
  /** Spread of the points around it: median distance / 0.6745, which for normal errors is their SD. */
  readonly scale: number;
  /** Points less the line, in the order given. */
  readonly residuals: readonly number[];
  /** Weight of each point, 1 for all that lie near. */
  readonly weights: readonly number[];
  /** False when the weights still changed after the last step. */
  readonly converged: boolean;
}

/** Residuals up to this many scales count in full: 95 % as efficient as least squares for normal errors. */
const HUBER_TUNING = 1.345;

/** Median of the absolute value of a standard normal variable. */
const NORMAL_MEDIAN_DISTANCE = 0.6745;
const MOST_STEPS = 500;

/**
 * Straight line by Huber's M-estimation: least squares first, then again and again with points further away
 * than 1.345 scales given less weight, the scale being the median distance from the line / 0.6745, until the
 * line stands still. Nothing is drawn: the same points give the same line.
 *
 * Needs more points than parameters and, with an intercept, two different x; the caller checks that.
 * @param x One number for each point.
 * @param y As long as `x`.
 * @param options.throughOrigin Whether the line is to pass through 0, 0. Default false.
 * @example
 * huberLine([1, 2, 3, 4], [2, 4, 6, 8]).slope // → 2
 * @see Huber, P. J. (1981), Robust Statistics, Wiley, chapters 6 and 7, also for the errors (from memory).
 *   Checked against `rlm` of R's MASS package.
 */
export function huberLine(
  x: readonly number[],
  y: readonly number[],
  options: { readonly throughOrigin?: boolean } = {},
): HuberLine {
  const throughOrigin = options.throughOrigin === true;
  let weights: readonly number[] = x.map(() => 1);
  let line = weightedLine(x, y, weights, throughOrigin);
  let residuals = residualsOf(x, y, line);
  let scale = 0;
  let converged = false;
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    scale = median(residuals.map(Math.abs)) / NORMAL_MEDIAN_DISTANCE;
    // More than half of the points lie on the line: it cannot be improved.
    if (scale <= 1e-12 * greatest(y.map(Math.abs))) {
      converged = true;
      break;
    }
    weights = residuals.map((residual) => Math.min(1, (HUBER_TUNING * scale) / Math.abs(residual)));
    line = weightedLine(x, y, weights, throughOrigin);
    const before = residuals;
    residuals = residualsOf(x, y, line);
    const [moved, size] = [
      before.reduce((sum, old, i) => sum + (old - (residuals[i] ?? 0)) ** 2, 0),
      before.reduce((sum, old) => sum + old * old, 0),
    ];
    converged = Math.sqrt(moved / Math.max(1e-20, size)) < 1e-13;
  }
  scale = scale > 0 ? scale : 0;
  return { ...line, ...errorsOf(x, residuals, scale, throughOrigin), scale, residuals, weights, converged };
}

interface Line {
  readonly intercept: number;
  readonly slope: number;
}

function weightedLine(
  x: readonly number[],
  y: readonly number[],
  weights: readonly number[],
  throughOrigin: boolean,
): Line {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const meanOf = (values: readonly number[]): number =>
    throughOrigin ? 0 : values.reduce((sum, value, i) => sum + (weights[i] ?? 0) * value, 0) / total;
  const [middleX, middleY] = [meanOf(x), meanOf(y)];
  let [squares, products] = [0, 0];
  x.forEach((value, i) => {
    const weight = weights[i] ?? 0;
    squares += weight * (value - middleX) ** 2;
    products += weight * (value - middleX) * ((y[i] ?? 0) - middleY);
  });
  const slope = products / squares;
  return { slope, intercept: middleY - slope * middleX };
}

function residualsOf(x: readonly number[], y: readonly number[], { intercept, slope }: Line): number[] {
  return x.map((value, i) => (y[i] ?? 0) - intercept - slope * value);
}

// Huber's variance: the mean square of the pulled-in residuals over the squared share of points that count
// in full, with his correction for few points, times the inverse of X'X.
function errorsOf(
  x: readonly number[],
  residuals: readonly number[],
  scale: number,
  throughOrigin: boolean,
): Pick<HuberLine, "interceptVariance" | "slopeVariance" | "covariance"> {
  const count = x.length;
  const parameters = throughOrigin ? 1 : 2;
  if (scale === 0) return { interceptVariance: 0, slopeVariance: 0, covariance: 0 };
  const bound = HUBER_TUNING * scale;
  const pulled = residuals.reduce((sum, one) => sum + Math.min(Math.abs(one), bound) ** 2, 0);
  const full = residuals.filter((one) => Math.abs(one) <= bound).length / count;
  const fullVariance = (full * (1 - full) * count) / (count - 1);
  const correction = 1 + (parameters * fullVariance) / (count * full * full);
  const variance = (pulled / (count - parameters)) * (correction / full) ** 2;
  const sumX = x.reduce((sum, value) => sum + value, 0);
  const sumXX = x.reduce((sum, value) => sum + value * value, 0);
  if (throughOrigin) return { interceptVariance: 0, slopeVariance: variance / sumXX, covariance: 0 };
  const middle = sumX / count;
  const spread = x.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return {
    slopeVariance: variance / spread,
    interceptVariance: variance * (1 / count + (middle * middle) / spread),
    covariance: (-variance * middle) / spread,
  };
}

/**
 * Middle value, or the mean of the two middle ones.
 * @internal
 */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? upper) + upper) / 2;
}
