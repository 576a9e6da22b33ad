import type { Method } from "../diurnal/method.ts";
import type { LinearResponse } from "../response/linear.ts";
import { type CurveFormula, SINE, TRIANGLE, curveDay, middle } from "./curve-formula.ts";
import { decimalLiteral } from "./literal.ts";

/** What stands for a day's readings: expressions of 64-bit floating-point type. */
export interface DayOperands {
  readonly low: string;
  readonly high: string;
  /** The next day's minimum, or `null` where the method does not ask for it. */
  readonly next: string | null;
}

/** Whether a method's day ends at the next day's minimum. */
export function needsNextDay(method: Method): boolean {
  return method === "double-sine" || method === "double-triangle";
}

/**
 * Degree-days of one day, 0 or more; NULL unless each reading is a number and the minimum at most the
 * maximum. The comparisons do it all: with NULL they are unknown, and NaN, which some engines order above
 * every number and others not at all, is within two limits in neither.
 */
export function dayFormula(method: Method, operands: DayOperands, response: LinearResponse): string {
  const { low, high, next } = operands;
  const usable = [
    usableDay(low, high),
    ...(next === null ? [] : [`${next} > ${LEAST} AND ${next} < ${MOST}`]),
  ];
  return `CASE WHEN ${usable.join(" AND ")} THEN ${usableDayFormula(method, operands, response)} END`;
}

// Far from any temperature, and a difference of two such numbers is still one.
const [LEAST, MOST] = ["-1E300", "1E300"];

/** Whether both readings are numbers in their order; unknown or false otherwise. */
export function usableDay(low: string, high: string): string {
  return `${low} > ${LEAST} AND ${low} <= ${high} AND ${high} < ${MOST}`;
}

/** Whether both readings are numbers and the minimum is above the maximum. */
export function reversedDay(low: string, high: string): string {
  return `${low} < ${MOST} AND ${low} > ${high} AND ${high} > ${LEAST}`;
}

function usableDayFormula(
  method: Method,
  { low, high, next }: DayOperands,
  response: LinearResponse,
): string {
  const falling = next ?? low;
  switch (method) {
    case "average":
      return rateAt(middle(low, high), response);
    case "clamped-mean":
      return aboveLower(middle(low, high), response);
    case "clamped-average":
      return `(${aboveLower(low, response)} + ${aboveLower(high, response)}) / 2`;
    case "single-sine":
      return curveDay(SINE, low, high, response);
    case "single-triangle":
      return curveDay(TRIANGLE, low, high, response);
    case "double-sine":
      return twoHalves(SINE, low, high, falling, response);
    case "double-triangle":
      return twoHalves(TRIANGLE, low, high, falling, response);
  }
}

/** The rate at one temperature that holds all day. */
function rateAt(mean: string, { lower, upper, zero, cutoff }: LinearResponse): string {
  const [l, u, z] = [lower, upper, zero].map(decimalLiteral);
  const rise = `CASE WHEN ${mean} <= ${l} THEN 0`;
  switch (cutoff) {
    case "none":
      return `${rise} ELSE ${mean} - ${l} END`;
    case "horizontal":
      return `${rise} WHEN ${mean} <= ${u} THEN ${mean} - ${l} ELSE ${decimalLiteral(upper - lower)} END`;
    case "intermediate":
      return `${rise} WHEN ${mean} <= ${u} THEN ${mean} - ${l} WHEN ${mean} < ${z} THEN ${z} - ${mean} ELSE 0 END`;
    case "vertical":
      return `${rise} WHEN ${mean} <= ${u} THEN ${mean} - ${l} ELSE 0 END`;
  }
}

/** A temperature brought between the thresholds, less the lower one; the cutoff has no say in it. */
function aboveLower(value: string, { lower, upper }: LinearResponse): string {
  const l = decimalLiteral(lower);
  const held =
    upper === Infinity
      ? ""
      : `WHEN ${value} >= ${decimalLiteral(upper)} THEN ${decimalLiteral(upper - lower)} `;
  return `CASE WHEN ${value} <= ${l} THEN 0 ${held}ELSE ${value} - ${l} END`;
}

/** Half a day up to the maximum and half a one to the next minimum, which can be the warmer of the two. */
function twoHalves(
  curve: CurveFormula,
  low: string,
  high: string,
  next: string,
  response: LinearResponse,
): string {
  const fall = `CASE WHEN ${next} <= ${high} THEN ${curveDay(curve, next, high, response)} ELSE ${curveDay(curve, high, next, response)} END`;
  return `(${curveDay(curve, low, high, response)} + ${fall}) / 2`;
}
