/** A least-squares straight line y = intercept + slope·x. */
export interface StraightLine {
  readonly n: number;
  readonly intercept: number;
  readonly slope: number;
  /** `null` with two points, through which any line goes. */
  readonly interceptError: number | null;
  readonly slopeError: number | null;
  /** Squared correlation of x and y, 0 to 1. */
  readonly r2: number;
  /** Observed less fitted, in the order of the points. */
  readonly residuals: readonly number[];
  readonly residualSumOfSquares: number;
  /** Residual sum of squares over n - 2; `null` with two points. */
  readonly residualMeanSquare: number | null;
  readonly meanX: number;
  readonly meanY: number;
  /** Sum of squares of x about its mean. */
  readonly spreadX: number;
  readonly spreadY: number;
  /** Sum of the weights; n where there are none. */
  readonly weight: number;
}

/**
 * The least-squares line through points, with the standard errors of a regression. Sums are taken about the
 * means, which keeps nine digits where sums of raw squares would lose them.
 * @param x At least two different values. @param y As many values.
 * @param weights Above 0: how many observations a point stands for. Default: 1 each.
 */
export function straightLine(
  x: readonly number[],
  y: readonly number[],
  weights: readonly number[] = x.map(() => 1),
): StraightLine {
  const n = x.length;
  const at = (list: readonly number[], i: number): number => list[i] ?? Number.NaN;
  const sumOf = (term: (i: number) => number): number => x.reduce((sum, _, i) => sum + term(i), 0);
  const w = (i: number): number => at(weights, i);

  const weight = sumOf(w);
  const meanX = sumOf((i) => w(i) * at(x, i)) / weight;
  const meanY = sumOf((i) => w(i) * at(y, i)) / weight;
  const spreadX = sumOf((i) => w(i) * (at(x, i) - meanX) ** 2);
  const spreadY = sumOf((i) => w(i) * (at(y, i) - meanY) ** 2);
  const along = sumOf((i) => w(i) * (at(x, i) - meanX) * (at(y, i) - meanY));
  const slope = along / spreadX;
  const residuals = x.map((_, i) => at(y, i) - meanY - slope * (at(x, i) - meanX));

  const residualSumOfSquares = sumOf((i) => w(i) * at(residuals, i) ** 2);
  const residualMeanSquare = n > 2 ? residualSumOfSquares / (n - 2) : null;
  const errorOf = (variance: number): number | null =>
    residualMeanSquare === null ? null : Math.sqrt(residualMeanSquare * variance);
  return {
    n,
    intercept: meanY - slope * meanX,
    slope,
    interceptError: errorOf(1 / weight + meanX ** 2 / spreadX),
    slopeError: errorOf(1 / spreadX),
    // Where y does not vary there is nothing to explain.
    r2: spreadY === 0 ? 0 : Math.min(1, slope * (along / spreadY)),
    residuals,
    residualSumOfSquares,
    residualMeanSquare,
    meanX,
    meanY,
    spreadX,
    spreadY,
    weight,
  };
}
