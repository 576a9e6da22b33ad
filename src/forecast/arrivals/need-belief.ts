import { normalCdf, normalDensity } from "../../numeric/normal-distribution.ts";
import { type Requirement, shareWithin } from "../../cohort/requirement.ts";
import type { DegreeDays } from "../../units.ts";

/** What a cohort may need, as a multiple of the constants, with its share of belief. */
export interface Pace {
  readonly pace: number;
  readonly weight: number;
}

/** Share of animals that need no more than an amount, over all that is believed of their pace. */
export type NeedBelief = (amount: DegreeDays) => number;

/** The belief as a sum over the paces. */
export function needBelief(requirement: Requirement, paces: readonly Pace[]): NeedBelief {
  const [only] = paces;
  if (paces.length === 1 && only !== undefined)
    return (amount) => only.weight * shareWithin(requirement, amount / only.pace);
  return (amount) => {
    let sum = 0;
    for (const { pace, weight } of paces) sum += weight * shareWithin(requirement, amount / pace);
    return sum;
  };
}

/** Knots in a standard deviation of the multiplier's logarithm. */
const KNOTS = 8;

/**
 * The same belief as a table over the logarithm of the amount, for when it is asked for thousands of times: a
 * polynomial of the fifth degree between two knots, which meets value, slope and bend at both. Knots are
 * made when first needed. It is within 1e-9 of the sum: the error is at most h⁶/46080 of the sixth derivative,
 * for h an eighth of a standard deviation 2e-10.
 */
export function needTable(requirement: Requirement, paces: readonly Pace[]): NeedBelief {
  const { least, most, sigma } = requirement;
  // A sharp edge is no curve; sums are exact there.
  if (!(sigma > 0) || !(most > 0)) return needBelief(requirement, paces);
  const h = sigma / KNOTS;
  const knots = new Map<number, Knot>();
  const cells = new Map<number, Cell>();
  const knotAt = (k: number): Knot => {
    let knot = knots.get(k);
    if (knot === undefined) knots.set(k, (knot = knotOf(least, most, sigma, paces, k * h)));
    return knot;
  };
  return (amount) => {
    if (!(amount > 0)) return 0;
    const x = Math.log(amount) / h;
    const k = Math.floor(x);
    let cell = cells.get(k);
    if (cell === undefined) cells.set(k, (cell = cellBetween(knotAt(k), knotAt(k + 1), h)));
    const u = x - k;
    return cell.c0 + u * (cell.c1 + u * (cell.c2 + u * (cell.c3 + u * (cell.c4 + u * cell.c5))));
  };
}

/** Value, slope and bend over the logarithm of the amount. */
interface Knot {
  readonly value: number;
  readonly slope: number;
  readonly bend: number;
}

function knotOf(least: number, most: number, sigma: number, paces: readonly Pace[], log: number): Knot {
  let [value, slope, bend] = [0, 0, 0];
  const requirement = { least, most, sigma };
  for (const { pace, weight } of paces) {
    const amount = Math.exp(log) / pace;
    value += weight * shareWithin(requirement, amount);
    if (most === least) {
      const z = Math.log(amount / most) / sigma;
      slope += (weight * normalDensity(z)) / sigma;
      bend -= (weight * z * normalDensity(z)) / (sigma * sigma);
    } else {
      // The amount times the density of shareWithin, and what that becomes when it is differentiated again.
      const scale = (weight * amount * Math.exp((sigma * sigma) / 2)) / (most - least);
      const [zLow, zHigh] = [least, most].map((v) =>
        v <= 0 ? Infinity : Math.log(amount / v) / sigma + sigma,
      );
      const [low = 0, high = 0] = [zLow, zHigh];
      const share = normalCdf(low) - normalCdf(high);
      slope += scale * share;
      bend += scale * (share + (normalDensity(low) - normalDensity(high)) / sigma);
    }
  }
  return { value, slope, bend };
}

/** Coefficients of a polynomial over the share of the way from one knot to the next. */
interface Cell {
  readonly c0: number;
  readonly c1: number;
  readonly c2: number;
  readonly c3: number;
  readonly c4: number;
  readonly c5: number;
}

function cellBetween(from: Knot, to: Knot, h: number): Cell {
  const [a, b] = [from.slope * h, to.slope * h];
  const [p, q] = [(from.bend * h * h) / 2, (to.bend * h * h) / 2];
  const rise = to.value - from.value;
  return {
    c0: from.value,
    c1: a,
    c2: p,
    c3: 10 * rise - 6 * a - 4 * b - 3 * p + q,
    c4: -15 * rise + 8 * a + 7 * b + 3 * p - 2 * q,
    c5: 6 * rise - 3 * a - 3 * b - p + q,
  };
}
