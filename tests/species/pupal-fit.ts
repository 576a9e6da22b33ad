import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { published } from "../support/published.ts";
import { straightLine } from "../support/straight-line.ts";

// The monarch's pupal constant, fitted to open rearing figures in four ways and judged on what each fit did
// not see. Development above 33 °C is held at its 33 °C rate throughout.

/** One incubator: its temperature, °C, and the mean pupal stage in it, days. */
export interface Incubator {
  readonly temperature: number;
  readonly days: number;
}

/** A lower threshold, °C, and a thermal constant, °C·day. */
export interface Line {
  readonly lower: number;
  readonly degreeDays: number;
}

/** A way to come to a line; `fit` of the published one looks at no rows. */
export interface Way {
  readonly name: string;
  readonly fit: (rows: readonly Incubator[]) => Line;
}

const UPPER = 33;
const held = (temperature: number): number => Math.min(temperature, UPPER);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

/** Uninfected controls of Ragonese et al. 2024, one row an incubator. */
export const incubators: readonly Incubator[] = published("monarch-rearing").constant.rows.map(
  ({ temperature, pupaDays }) => ({ temperature, days: pupaDays.mean }),
);

/** Days that a line gives at a constant temperature. */
export function predictedDays({ lower, degreeDays }: Line, temperature: number): number {
  return degreeDays / (held(temperature) - lower);
}

/** How far off a line is in one incubator, as a share of what was seen. */
export function relativeError(line: Line, { temperature, days }: Incubator): number {
  return predictedDays(line, temperature) / days - 1;
}

/** Mean absolute relative error, a fraction. */
export function meanAbsoluteError(line: Line, rows: readonly Incubator[]): number {
  return mean(rows.map((row) => Math.abs(relativeError(line, row))));
}

/** The constant that makes the squared relative errors least for a given lower threshold: closed form. */
export function constantGiven(lower: number, rows: readonly Incubator[]): Line {
  // Relative error is K·x - 1 with x = 1 / ((T - lower)·days), so K = Σx / Σx².
  const x = rows.map(({ temperature, days }) => 1 / ((held(temperature) - lower) * days));
  return { lower, degreeDays: sum(x) / sum(x.map((value) => value * value)) };
}

/** Threshold and constant from the straight line of 1/days on temperature (x-intercept, inverse slope). */
export function rateRegression(rows: readonly Incubator[]): Line {
  const { intercept, slope } = straightLine(
    rows.map(({ temperature, days }) => [held(temperature), 1 / days] as const),
  );
  return { lower: -intercept / slope, degreeDays: 1 / slope };
}

/** Threshold and constant by least squares on days, each weighted by 1/days²; threshold to 0.001 °C. */
export function weightedDays(rows: readonly Incubator[]): Line {
  let best: { line: Line; loss: number } | null = null;
  for (let step = 5000; step < 16000; step++) {
    const line = constantGiven(step / 1000, rows);
    const loss = sum(rows.map((row) => relativeError(line, row) ** 2));
    if (best === null || loss < best.loss) best = { line, loss };
  }
  if (best === null) throw new Error("no line was tried");
  return best.line;
}

const pupa = danausPlexippus.stages.find(({ stage }) => stage === "pupa");
if (!pupa) throw new Error("the monarch has no pupa");
const publishedLine: Line = { lower: pupa.lower.value, degreeDays: pupa.degreeDays.value };

/** The four ways, the published one first. */
export const ways: readonly Way[] = [
  { name: "published set, nothing fitted", fit: () => publishedLine },
  { name: "K fitted, base 11.5 kept", fit: (rows) => constantGiven(publishedLine.lower, rows) },
  { name: "both fitted, 1/days on temperature", fit: rateRegression },
  { name: "both fitted, days weighted by 1/days²", fit: weightedDays },
];

/** Mean absolute relative error when each incubator is predicted from the others. */
export function leaveOneOutError({ fit }: Way): number {
  return mean(
    incubators.map((row) => Math.abs(relativeError(fit(incubators.filter((other) => other !== row)), row))),
  );
}

/** Error on pupae kept outdoors, a fraction: from, to. They differ where the sum over the base is only bounded. */
export function outdoorError(
  { lower, degreeDays }: Line,
  season: "summer" | "fall",
): readonly [number, number] {
  const row = published("monarch-rearing").outdoor.pupa.find((candidate) => candidate.season === season);
  if (!row) throw new Error(`no outdoor row for ${season}`);
  // In summer it is never colder than the base, so each °C of base is worth one degree-day a day. In fall it
  // often is: the sum falls with the base, ever more slowly, so that going on at the pace between 10 and
  // 11.5 °C gives the least it can be and standing still the most.
  const pace = season === "summer" ? row.days.mean : (row.degreeDaysAbove10 - row.degreeDays) / 1.5;
  const along = row.degreeDays - pace * (lower - 11.5);
  const ends = season === "summer" ? [along, along] : [row.degreeDays, along];
  const errors = ends.map((needed) => degreeDays / needed - 1);
  return [Math.min(...errors), Math.max(...errors)];
}
