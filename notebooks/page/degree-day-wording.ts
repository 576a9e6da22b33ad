import { degreeDays } from "../../src/clock/degree-days.ts";
import type { Method } from "../../src/diurnal/method.ts";
import { displayUnit, short, temperatureText } from "../../src/plot/display-unit.ts";
import { cutoffName } from "../../src/plot/index.ts";
import type { TemperatureRow } from "../../src/plot/index.ts";
import type { Cutoff, Thresholds } from "../../src/response/linear.ts";
import type { Celsius, DegreeDays, TemperatureUnit } from "../../src/units.ts";
import { type PrintedExample, meets } from "./printed-examples.ts";

/** Methods that need nothing but one day's two extremes. */
export const DAY_METHODS = [
  "single-sine",
  "single-triangle",
  "average",
  "clamped-average",
  "clamped-mean",
] as const satisfies readonly Method[];

/** A day and the thresholds it is taken with, °C. */
export interface DaySet {
  readonly min: Celsius;
  readonly max: Celsius;
  readonly options: Thresholds & { readonly method: Method };
}

/**
 * A day with the degree-days that it counts.
 * @throws {InputError} in the numbers of the reader's own unit, which are those on the sliders.
 */
export function countedDay(day: DaySet, unit: TemperatureUnit): DaySet & { readonly counts: DegreeDays } {
  const { min, max, options } = day;
  const { lower, upper = null } = options;
  const told = (value: Celsius): number => Math.round(displayUnit(unit).temperature(value) * 100) / 100;
  const thresholds = { lower: told(lower), ...(upper !== null && { upper: told(upper) }) };
  degreeDays({ min: told(min), max: told(max) }, { ...options, ...thresholds });
  return { ...day, counts: degreeDays({ min, max }, options) };
}

/** Degree-days as a number of the unit, to a tenth. */
export function sumText(value: DegreeDays, unit: TemperatureUnit): string {
  return displayUnit(unit).sum(value).toFixed(1);
}

/** One of a day's extremes as a number of the unit; a dash where there is none. */
export function extremeText(
  rows: readonly TemperatureRow[],
  { day, which }: { readonly day: string; readonly which: "min" | "max" },
  unit: TemperatureUnit,
): string {
  const value = rows.find((row) => row.day === day)?.[which] ?? null;
  return value === null ? "–" : short(displayUnit(unit).temperature(value));
}

/** A printed example, worked step by step, and what a sine wave makes of the same day. */
export function workedOf(example: PrintedExample): string {
  const { source, rule, day, lower, upper, unit, printed, computed, sine, steps } = example;
  const thresholds = upper === null ? `threshold ${lower}` : `thresholds ${lower} and ${upper}`;
  const agrees = meets(example) ? "the same" : "not the same";
  return (
    `A day from ${day.min} to ${day.max} °${unit}, ${thresholds} °${unit}, by the rule “${rule}”: ${steps}. Printed is ` +
    `${printed} (${source}); the code of this page gives ${Math.round(computed * 100) / 100}, ${agrees}. A sine wave through the same two ` +
    `temperatures gives ${sine.toFixed(1)}: another rule, another number, so a sum always belongs with its rule.`
  );
}

/** What a day counts, and what its cutoff took. */
export function countsOf({ min, max, options }: DaySet, unit: TemperatureUnit): string {
  const { sum, degreeDay } = displayUnit(unit);
  const counts = degreeDays({ min, max }, options);
  const said = (value: number): string => `${short(sum(value))} ${degreeDay}`;
  if (counts === 0) return `This day counts ${said(0)}: nothing develops on it.`;
  const taken = options.method.startsWith("clamped-")
    ? 0
    : degreeDays({ min, max }, { ...options, cutoff: "none" }) - counts;
  const cut =
    taken > 0.005 ? ` The ${options.cutoff ?? "horizontal"} cutoff has taken ${said(taken)} away.` : "";
  return (
    `This day counts ${said(counts)}: as much as a whole day at ` +
    `${temperatureText(options.lower + counts, displayUnit(unit))}.${cut}`
  );
}

/** Whether a warmer afternoon counts for more, said of one degree. */
export function warmerOf({ min, max, options }: DaySet, unit: TemperatureUnit): string {
  const { sum, degreeDay, degree } = displayUnit(unit);
  const step = unit === "C" ? 1 : 1 / 1.8;
  const now = degreeDays({ min, max }, options);
  const difference = sum(degreeDays({ min, max: max + step }, options) - now);
  const size = Math.abs(difference).toFixed(2);
  const change =
    Number(size) === 0
      ? "as much as it does now"
      : `${size} ${degreeDay} ${difference > 0 ? "more" : "less"} than it does now`;
  const [before, after] = [max, max + step].map((value) => temperatureText(value, displayUnit(unit)));
  return `One ${degree} warmer at its highest, ${after} in place of ${before}, this day would count ${change}.`;
}

/**
 * From which highest temperature on a hotter day counts less, for each cutoff.
 * @throws {InputError} `invalid-thresholds` when the upper threshold is not above the lower one.
 */
export function turningsOf(day: DaySet, upper: Celsius, unit: TemperatureUnit): string {
  const { options } = day;
  if (options.method.startsWith("clamped-"))
    return "This method brings the temperatures between the thresholds and asks for no cutoff: a hotter day never counts less.";
  const said = (["none", "horizontal", "intermediate", "vertical"] as const).map((cutoff) => {
    const at = turning(day, cutoff, upper);
    return at === null
      ? `with ${article(cutoff)} never`
      : `with ${article(cutoff)} from about ${temperatureText(at, displayUnit(unit))} on`;
  });
  const from = temperatureText(day.min, displayUnit(unit));
  return `With a lowest of ${from} and these thresholds a hotter afternoon counts for less: ${said.join("; ")}.`;
}

function article(cutoff: Cutoff): string {
  const name = cutoffName(cutoff);
  return cutoff === "none" ? name : `${cutoff === "intermediate" ? "an" : "a"} ${name}`;
}

// The highest temperature that counts most, to half a degree; `null` where the sum never falls up to twice the
// distance of the thresholds above the upper one.
function turning({ min, options }: DaySet, cutoff: Cutoff, upper: Celsius): Celsius | null {
  const most = upper + 2 * (upper - options.lower);
  const sumAt = (max: Celsius): number => degreeDays({ min, max }, { ...options, upper, cutoff });
  for (let max = min; max < most; max += 0.5) {
    if (sumAt(max + 0.5) < sumAt(max) - 1e-9) return max;
  }
  return null;
}
