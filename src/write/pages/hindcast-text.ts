import { given, givenList } from "../../given.ts";
import type { LeadScores } from "../../evaluate/hindsight/hindcast-scores.ts";
import { counted } from "../../plain-words.ts";
import { signedText } from "../layout/number-text.ts";
import { MONTHS, columns, fullDayLabel, wrapped } from "../layout/text-layout.ts";

/** What hindcasts were made of, for their page. */
export interface HindcastSetting {
  /** Name of the species, such as `monarch`. */
  readonly animal: string;
  /** First and last day of the record. */
  readonly from: string;
  readonly to: string;
  /** Every so many-th day was a start. */
  readonly every: number;
  /** Months of the starts, 1 to 12. */
  readonly months: readonly number[];
}

/**
 * Scores of forecasts made in hindsight as plain text, at most 80 columns.
 * @param scores What `scoreHindcast` returned.
 */
export function hindcastText(scores: readonly LeadScores[], setting: HindcastSetting): string {
  givenList(scores, ["scores"]);
  given(setting, ["setting"], "an object with animal, from, to, every and months", "months");
  const { animal, from, to, every, months } = setting;
  const table = columns(
    [
      ["  days", "runs", "bias", "error", "CRPS", "in the", "skill over", "skill over"],
      ["  known", "scored", "days", "days", "days", "window", "usual days", "past years"],
      ...scores.map((row) => [
        `  ${row.lead}`,
        String(row.scored),
        signedText(row.biasDays),
        row.meanAbsoluteErrorDays.toFixed(1),
        row.crpsDays.toFixed(2),
        `${Math.round(row.coverage * 100)} %`,
        row.skillOnUsualDays.toFixed(2),
        row.lead === 0 ? "-" : row.skillOnClimatology.toFixed(2),
      ]),
    ],
    [1, 2, 3, 4, 5, 6, 7],
  );
  return [
    "FORECASTS IN HINDSIGHT",
    wrapped(
      `${animal}, from the begin of its first stage to adult, on your record from ${fullDayLabel(from)} to ${fullDayLabel(to)}. A start every ${every === 1 ? "day" : `${every} days`}, those in ${monthsText(months)}.`,
    ),
    "",
    table,
    "",
    ...WORDS.map(([word, meaning]) => wrapped(`${word}: ${meaning}`, { first: "  ", rest: "    " })),
    "",
    wrapped(runsText(scores)),
    "",
    wrapped(
      "This proves how well the other years of your record stand in for weather still to come, and nothing of the biology: the same constants are on both sides, so real animals will be further off.",
    ),
  ].join("\n");
}

const WORDS: readonly (readonly [string, string])[] = [
  ["days known", "days of measured temperatures when the forecast was made."],
  ["bias", "how much later (+) or earlier (-) than expected, on average."],
  ["error", "mean distance between expected and true date."],
  ["CRPS", "the same for the whole forecast with its window; 0 is perfect."],
  ["in the window", "how many came inside the window that is to hold 80 %."],
  [
    "skill",
    "1 is perfect, 0 no better, below 0 worse than what it is compared with: the usual number of days of other years, or past years with nothing known.",
  ],
];

function runsText(scores: readonly LeadScores[]): string {
  const [first] = scores;
  const { runs, beyondRecord } = first ?? { runs: 0, beyondRecord: 0 };
  const made = `${counted(runs, "run")} at each number of days known; none was left out`;
  if (beyondRecord === 0) return `${made}, and none ends after the record.`;
  const early = scores.map(({ lead, closedTooEarly }) => `${closedTooEarly} at ${counted(lead, "day")}`);
  const [unscored, closed] =
    beyondRecord === 1
      ? ["1 of them does, so that it has no score", "its window closed before that it was wrong"]
      : [
          `${beyondRecord} of them do, so that these have no score`,
          "their windows closed before that they were wrong",
        ];
  return `${made}. The record ends before ${unscored}; where ${closed} (${early.join(", ")}).`;
}

function monthsText(months: readonly number[]): string {
  if (months.length === MONTHS.length) return "all months";
  return months.map((month) => MONTHS[month - 1] ?? String(month)).join(", ");
}
