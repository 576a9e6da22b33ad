import type { LinearResponse } from "../response/linear.ts";
import { decimalLiteral } from "./literal.ts";

/** A day's curve, by two numbers where it crosses t (there low < t < high). */
export interface CurveFormula {
  /** Mean over the day of the excess above t. */
  readonly excess: (t: string, low: string, high: string) => string;
  /** Share of the day above t. */
  readonly above: (t: string, low: string, high: string) => string;
}

const PI = decimalLiteral(Math.PI);

/** Midway between two readings; written as the library does, so that both see it on the same side of t. */
export function middle(low: string, high: string): string {
  return `(${low} + (${high} - ${low}) / 2)`;
}

// Never 0 where it is used; an engine that works out every branch must not stop at the others.
function range(low: string, high: string): string {
  return `NULLIF(${high} - ${low}, 0)`;
}

/** Distance of t from the nearer extreme. Nothing in it is NULL, so engines agree on LEAST. */
function near(t: string, low: string, high: string): string {
  return `LEAST(${high} - ${t}, ${t} - ${low})`;
}

/**
 * Half the angle that a sine wave spends beyond t, on the side of the nearer extreme: an eighth of a turn at
 * most, where the arc sine is not steep. Rounding cannot take its argument out of 0 to 1.
 */
function halfAngle(t: string, low: string, high: string): string {
  return `ASIN(SQRT(${near(t, low, high)} / ${range(low, high)}))`;
}

/** One sine wave between the extremes; `src/diurnal/sine.ts` by the half angle, turned upside down as there. */
export const SINE: CurveFormula = {
  excess: (t, low, high) =>
    `GREATEST(${middle(low, high)} - ${t}, 0) + 2 * (SQRT((${high} - ${t}) * (${t} - ${low})) / 2 - ((${high} - ${low}) / 2 - ${near(t, low, high)}) * ${halfAngle(t, low, high)}) / ${PI}`,
  above: (t, low, high) =>
    `CASE WHEN ${high} - ${t} <= ${t} - ${low} THEN 2 * ${halfAngle(t, low, high)} / ${PI} ELSE 1 - 2 * ${halfAngle(t, low, high)} / ${PI} END`,
};

/** Straight lines between the extremes; as `src/diurnal/triangle.ts`. */
export const TRIANGLE: CurveFormula = {
  excess: (t, low, high) => `(${high} - ${t}) / ${range(low, high)} * (${high} - ${t}) / 2`,
  above: (t, low, high) => `(${high} - ${t}) / ${range(low, high)}`,
};

/** Degree-days of a day on a curve, as one expression; 0 or more. */
export function curveDay(curve: CurveFormula, low: string, high: string, response: LinearResponse): string {
  const { upper, zero, atUpper, atZero, stop, cutoff } = response;
  const excess = (at: number): string => {
    const t = decimalLiteral(at);
    return `CASE WHEN ${high} <= ${t} THEN 0 WHEN ${low} >= ${t} THEN ${middle(low, high)} - ${t} ELSE ${curve.excess(t, low, high)} END`;
  };
  const terms = [excess(response.lower)];
  if (atUpper !== 0) terms.push(`- ${atUpper === -1 ? "" : "2 * "}${excess(upper)}`);
  if (atZero !== 0) terms.push(`+ ${excess(zero)}`);
  const u = decimalLiteral(upper);
  if (stop !== 0) {
    terms.push(
      `- ${decimalLiteral(stop)} * CASE WHEN ${high} <= ${u} THEN 0 WHEN ${low} >= ${u} THEN 1 ELSE ${curve.above(u, low, high)} END`,
    );
  }
  // Nothing in it is NULL, so engines agree on GREATEST. It takes crumbs of rounding below 0.
  const sum = `GREATEST(0, ${terms.join(" ")})`;
  if (cutoff !== "vertical" && cutoff !== "intermediate") return sum;
  // Where the cutoff takes all, rounding leaves crumbs above 0 too.
  const gone = decimalLiteral(cutoff === "vertical" ? upper : zero);
  return `CASE WHEN ${low} >= ${gone} AND ${high} > ${gone} THEN 0 ELSE ${sum} END`;
}
