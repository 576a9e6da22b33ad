import { given } from "../../given.ts";
import type { ComparedStage, Comparison } from "../../evaluate/hindsight/compare.ts";
import { stageName } from "../../species/stage-names.ts";
import { signedText } from "../layout/number-text.ts";
import { bullet, columns, dayLabel, inSeveralYears, wrapped } from "../layout/text-layout.ts";

/** Predicted against logged as plain text, at most 80 columns. */
export function comparisonText(comparison: Comparison): string {
  given(comparison, ["comparison"], "what compare returns", "rows");
  const { rows } = comparison;
  const instants = rows.flatMap(({ predicted, loggedOn }) => [predicted.expected, loggedOn]);
  const label = inSeveralYears(instants) ? (day: string): string => day : dayLabel;
  const expected = ({ predicted }: ComparedStage): string =>
    predicted.expected === null ? "not known" : label(predicted.expected.slice(0, 10));
  const table = columns(
    [
      ["", "animals", "expected", "seen", "days", "deg-days", "inside"],
      ...rows.map((row) => [
        `  ${stageName(row.stage)}`,
        String(row.count),
        expected(row),
        label(row.loggedOn.slice(0, 10)),
        signedText(row.errorDays),
        signedText(row.errorDegreeDays),
        row.insideWindow === null ? "-" : row.insideWindow ? "yes" : "no",
      ]),
    ],
    [1, 4, 5],
  );
  const reasons = rows
    .filter((row) => row.reason !== null)
    .map((row) => bullet(`${stageName(row.stage)}, ${row.loggedOn}: ${row.reason}`));
  return [
    "EXPECTED AND SEEN",
    table,
    "",
    wrapped(
      "Days and degree-days say how much later (+) or earlier (-) than expected; inside, whether the window held.",
    ),
    "",
    wrapped(summary(comparison)),
    ...(reasons.length > 0 ? ["", ...reasons] : []),
    "",
  ].join("\n");
}

function summary(comparison: Comparison): string {
  const { biasDays, meanAbsoluteErrorDays, shareInside, shareExpectedInside } = comparison;
  if (biasDays === null || meanAbsoluteErrorDays === null)
    return "Nothing logged could be compared with the forecast.";
  const size = Math.abs(biasDays).toFixed(1);
  const bias =
    size === "0.0"
      ? "neither late nor early"
      : `${size} days ${biasDays > 0 ? "later" : "earlier"} than expected`;
  const inside =
    shareInside === null
      ? ""
      : ` ${Math.round(shareInside * 100)} % were inside their windows (${Math.round(shareExpectedInside * 100)} % if the windows are true).`;
  return `On average the animals were ${bias}; the mean distance was ${meanAbsoluteErrorDays.toFixed(1)} days.${inside}`;
}
