import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import type { Note } from "../../notes.ts";
import { type LinearRange, linearRange } from "./linear-range.ts";
import { type StraightLine, straightLine } from "../../numeric/straight-line.ts";
import { thresholdNotes } from "./threshold-notes.ts";
import { type Trial, type TrialColumns, checkRising, trialColumns } from "./trial.ts";

/** How a threshold is estimated from trials. */
export type ThresholdMethod = "x-intercept" | "reduced-major-axis";

/** The methods by name. */
export const THRESHOLD_METHODS: readonly ThresholdMethod[] = ["x-intercept", "reduced-major-axis"];

/** The straight line behind an estimate. */
export interface ThresholdLine {
  /** `x-intercept`: temperature. `reduced-major-axis`: days. */
  readonly x: "temperature" | "days";
  /** `x-intercept`: 1 / days. `reduced-major-axis`: days times temperature. */
  readonly y: "rate" | "days-temperature";
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number | null;
  readonly slopeError: number | null;
  /** Squared correlation of x and y, 0 to 1. */
  readonly r2: number;
  /** Observed less fitted y, in the order of the trials. */
  readonly residuals: readonly number[];
}

/** What {@link estimateThreshold} returns. */
export interface ThresholdEstimate {
  readonly method: ThresholdMethod;
  /** Lower developmental threshold, in the unit of the trials. */
  readonly lower: number;
  /** Thermal constant: degree-days above `lower` that development needs, in the unit of the trials times days. */
  readonly thermalConstant: number;
  /** Standard errors; `null` with two trials and for the reduced major axis. */
  readonly lowerError: number | null;
  readonly thermalConstantError: number | null;
  readonly line: ThresholdLine;
  /** Always judged on the regression of 1/days on temperature, whatever the method. */
  readonly diagnostics: LinearRange;
  readonly notes: readonly Note[];
}

/**
 * Lower developmental threshold and thermal constant from how long development took at constant temperatures.
 *
 * - `x-intercept`, the default: 1/days is regressed on temperature, 1/D = a + b·T. The threshold is where the line
 *   meets zero, -a/b, the constant is 1/b. With standard errors.
 * - `reduced-major-axis`: D·T = K + t·D, a line that allows for error in both directions and gives long
 *   durations more say. No standard errors: D stands on both sides, so its error does too, and the usual formula
 *   for a reduced major axis assumes that the two errors are independent. Its answer depends on the zero of the
 *   temperature scale unless the points lie exactly on a line, so that °C and °F do not agree to all digits.
 *
 * Only temperatures on the straight part of development belong here. `diagnostics` points at ends that bend away.
 * Any one unit of temperature: the same unit comes out.
 * @param trials Two or more different temperatures. Two give a line and no standard errors; `notes` says so. At
 *   least four are needed before a bend can show.
 * @throws {InputError} `invalid-number` for temperatures, days or weights that are none; `invalid-trials` when all
 *   trials are at one temperature or development gets slower with warmth; `invalid-method`.
 * @example
 * estimateThreshold([{ temperature: 15, days: 40 }, { temperature: 20, days: 20 }]).lower // → 10
 * @example
 * estimateThreshold([{ temperature: 15, days: 40 }, { temperature: 20, days: 20 }]).thermalConstant // → 200
 * @see Campbell, A. et al. (1974), J. Appl. Ecol. 11, 431-438 (formulas from memory, derived again by the delta
 *   method); Ikemoto, T. & Takai, K. (2000), Environ. Entomol. 29, 671-682 (from memory).
 */
export function estimateThreshold(
  trials: readonly Trial[],
  options: { readonly method?: ThresholdMethod } = {},
): ThresholdEstimate {
  given(options, ["options"], "an object of options");
  const { method = "x-intercept" } = options;
  if (!THRESHOLD_METHODS.includes(method)) {
    throw new InputError(
      "invalid-method",
      `method is ${shown(method)}; it must be one of ${THRESHOLD_METHODS.join(", ")}.`,
      { path: ["method"], value: method },
    );
  }
  const columns = trialColumns(
    trials,
    2,
    "a threshold needs trials at two or more, and should have them at four or more",
  );
  const regression = straightLine(columns.temperatures, columns.rates, columns.weights);
  checkRising(regression, columns);
  const intercept = interceptEstimate(regression);
  const estimate = method === "x-intercept" ? intercept : majorAxisEstimate(columns);
  const diagnostics = linearRange(columns, intercept.lower, intercept.lowerError);
  return {
    method,
    ...estimate,
    diagnostics,
    notes: thresholdNotes(columns, estimate, intercept.lowerError, diagnostics),
  };
}

/**
 * Threshold and thermal constant of a line 1/days = intercept + slope·temperature, such as one printed in a paper.
 * @param line The slope must be above 0.
 * @returns In the temperature unit of the line.
 * @throws {InputError} `invalid-number` when a coefficient is none or the slope is not above 0.
 * @example
 * thresholdOfLine({ intercept: -0.05, slope: 0.005 }) // → { lower: 10, thermalConstant: 200 }
 */
export function thresholdOfLine(line: { readonly intercept: number; readonly slope: number }): {
  lower: number;
  thermalConstant: number;
} {
  given(line, ["line"], "an object with intercept and slope");
  const { intercept, slope } = line;
  if (!Number.isFinite(intercept) || !Number.isFinite(slope) || slope <= 0) {
    throw new InputError(
      "invalid-number",
      `the line is ${shown(intercept)} + ${shown(slope)}·temperature; both must be finite numbers and the slope above 0.`,
      { path: ["line"], value: line },
    );
  }
  return { lower: -intercept / slope, thermalConstant: 1 / slope };
}

type Estimate = Pick<
  ThresholdEstimate,
  "lower" | "thermalConstant" | "lowerError" | "thermalConstantError" | "line"
>;

function interceptEstimate(regression: StraightLine): Estimate {
  const { intercept, slope, interceptError, slopeError, r2, residuals } = regression;
  const { residualMeanSquare, meanY, weight } = regression;
  return {
    ...thresholdOfLine(regression),
    lowerError:
      residualMeanSquare === null || slopeError === null
        ? null
        : (meanY / slope) * Math.sqrt(residualMeanSquare / (weight * meanY ** 2) + (slopeError / slope) ** 2),
    thermalConstantError: slopeError === null ? null : slopeError / slope ** 2,
    line: { x: "temperature", y: "rate", intercept, slope, interceptError, slopeError, r2, residuals },
  };
}

function majorAxisEstimate({ temperatures, days, weights }: TrialColumns): Estimate {
  const products = days.map((d, i) => d * (temperatures[i] ?? Number.NaN));
  const { slope: leastSquares, spreadX, spreadY, meanX, meanY, r2 } = straightLine(days, products, weights);
  const slope = Math.sign(leastSquares) * Math.sqrt(spreadY / spreadX);
  const intercept = meanY - slope * meanX;
  if (intercept <= 0) {
    throw new InputError(
      "invalid-trials",
      `the reduced major axis gives a thermal constant of ${intercept}, which must be above 0; the trials do not lie on the straight part of development.`,
      { path: ["trials"], value: intercept },
    );
  }
  return {
    lower: slope,
    thermalConstant: intercept,
    lowerError: null,
    thermalConstantError: null,
    line: {
      x: "days",
      y: "days-temperature",
      intercept,
      slope,
      interceptError: null,
      slopeError: null,
      r2,
      residuals: products.map((y, i) => y - intercept - slope * (days[i] ?? Number.NaN)),
    },
  };
}
