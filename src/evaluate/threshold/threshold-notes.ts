import type { Note } from "../../notes.ts";
import type { LinearRange, RangeEnd } from "./linear-range.ts";
import type { TrialColumns } from "./trial.ts";

/** What a reader of an estimate must know, in the order of weight. @internal */
export function thresholdNotes(
  { temperatures }: TrialColumns,
  { line }: { readonly line: { readonly x: "temperature" | "days"; readonly r2: number } },
  lowerError: number | null,
  { coldest, hottest, suggested, leftOut }: LinearRange,
): Note[] {
  const notes: Note[] = [];
  const different = new Set(temperatures).size;
  if (different < 4) {
    notes.push({
      code: "few-trials",
      message: `There are trials at ${different} different temperatures. ${
        different === 2
          ? "Any two lie on a line, so nothing shows whether both belong to the straight part of development"
          : "At least four are needed before a bend can show"
      }.${temperatures.length === 2 ? " Standard errors need at least three trials." : ""}`,
    });
  }
  if (leftOut.length > 0) {
    notes.push({
      code: "outside-linear-range",
      message: `Development at ${leftOut.join(", ")} bends away from the line through the other temperatures. Estimate again from the trials between ${suggested.min} and ${suggested.max}.`,
    });
  }
  for (const end of [coldest, hottest]) {
    if (end.movesLower === true && !leftOut.includes(end.temperature) && lowerError !== null) {
      notes.push({ code: "outside-linear-range", message: moved(end, lowerError) });
    }
  }
  if (line.x === "days" && line.r2 < 0.8) {
    notes.push({
      code: "weak-line",
      message: `Days and days times temperature share only ${(100 * line.r2).toFixed(0)} % of their variation, which the reduced major axis takes for slope: it is ${(1 / Math.sqrt(line.r2)).toFixed(1)} times the least-squares slope. Thresholds near 0 of the temperature scale cannot be estimated this way.`,
    });
  }
  return notes;
}

function moved({ end, temperature, lowerWithout }: RangeEnd, lowerError: number): string {
  return `Without the ${end} temperature, ${temperature}, the lower threshold would be ${lowerWithout?.toPrecision(4) ?? "unknown"}; it moves by more than its standard error of ${lowerError.toPrecision(2)}. The trials are too few or too scattered to tell whether ${temperature} lies on the straight part.`;
}
