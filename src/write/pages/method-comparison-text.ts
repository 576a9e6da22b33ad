import { given } from "../../given.ts";
import type { MethodComparison, MethodRow } from "../../evaluate/methods/compare-methods.ts";
import { type DisplayUnit, type TemperatureUnit, displayUnit } from "../../units.ts";
import { signedText } from "../layout/number-text.ts";
import { notesText } from "../layout/remarks-text.ts";
import { columns, pageOf, wrapped } from "../layout/text-layout.ts";

/**
 * What each method and cutoff says, as plain text, at most 80 columns.
 * @param unit Unit to show thresholds and degree-days in. Default C.
 * @example
 * methodComparisonText(compareMethods(dailyTemperatures("2026-05-01", [8], [24]), { lower: 10 })).split("\n")[1] // → "2026-05-01 to 2026-05-01, lower threshold 10 °C, no upper one."
 */
export function methodComparisonText(comparison: MethodComparison, unit: TemperatureUnit = "C"): string {
  given(comparison, ["comparison"], "what compareMethods returns", "rows");
  const display = displayUnit(unit);
  const { sum } = display;
  // Sums in °F are told apart from the usual ones.
  const name = unit === "F" ? display.degreeDay : "degree-days";
  const { from, to, amount, reference, rows, notes } = comparison;
  const wanted = amount !== null;
  const heading = ["", "cutoff", unit === "F" ? "°F days" : "deg-days", "% more"];
  const table = columns(
    [
      [...heading, ...(wanted ? ["reached", "days"] : [])],
      ...rows.map((row) => [
        `  ${row.method}`,
        row.cutoff,
        sum(row.degreeDays).toFixed(1),
        signedText(row.differencePercent),
        ...(wanted ? [row.reachedAt?.slice(0, 10) ?? "not", signedText(row.differenceDays)] : []),
      ]),
    ],
    [2, 3, 5],
  );
  const target = wanted ? ` Reached is the day on which ${short(sum(amount))} ${name} are full.` : "";
  const page = [
    "METHODS COMPARED",
    wrapped(`${from} to ${to}, ${thresholdsText(comparison, display)}.`),
    "",
    table,
    "",
    wrapped(
      `Percent and days compare with ${referenceText(reference)} (${sum(reference.degreeDays).toFixed(1)} ${name}): more (+) or less (-), later (+) or earlier (-).${target}`,
    ),
  ].join("\n");
  return pageOf([page, notesText(notes)]);
}

function thresholdsText({ lower, upper }: MethodComparison, { degree, temperature }: DisplayUnit): string {
  const told = (celsius: number): string => `${short(temperature(celsius))} ${degree}`;
  return upper === null
    ? `lower threshold ${told(lower)}, no upper one`
    : `lower threshold ${told(lower)}, upper threshold ${told(upper)}`;
}

function referenceText({ method, cutoff }: MethodRow): string {
  const cut = cutoff === "none" ? "without a cutoff" : `with a ${cutoff} cutoff`;
  const what = method === "measured" ? "the readings themselves" : `the ${method}`;
  return `${what} ${cut}`;
}

/** A number without the digits that converting it to another unit and back left over. */
function short(value: number): string {
  return String(Number(value.toPrecision(9)));
}
