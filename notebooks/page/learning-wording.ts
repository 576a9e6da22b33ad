import type { Comparison } from "../../src/evaluate/hindsight/compare.ts";
import type { Learned } from "../../src/forecast/question/learned.ts";
import type { Forecast } from "../../src/forecast/question/result.ts";
import { type Outlook, type OutlookRow, longDate, sureSince } from "../../src/plot/index.ts";
import { percent } from "./wording.ts";

/** When the adults are expected as seen from one evening, and how that differs from the first one. */
export function outlookOf({ day, forecast }: Outlook, first: Outlook): string {
  const evening = `As seen in the evening of ${longDate(day)} ${day.slice(0, 4)}`;
  const begins = adultsOf(forecast);
  if (begins === undefined) return `${evening}, the animals are adults already.`;
  const { early, expected, late } = begins;
  if (expected === null) return `${evening}, there is no date for the adults.`;
  const [low, , high] = forecast.shares;
  const range =
    early === null || late === null
      ? ""
      : `, ${percent(low)} by ${longDate(early)} and ${percent(high)} by ${longDate(late)}`;
  const before = adultsOf(first.forecast)?.expected ?? null;
  const days = before === null ? 0 : Math.round((Date.parse(expected) - Date.parse(before)) / 86_400_000);
  const moved =
    day === first.day || before === null
      ? ""
      : days === 0
        ? " The first evening said the same day, give or take half a day."
        : ` That is ${counted(Math.abs(days), "day")} ${days > 0 ? "later" : "earlier"} than the first evening said.`;
  return `${evening}, half of the animals should be adults by ${longDate(expected)}${range}.${moved}`;
}

/** What the log taught by one evening. */
export function learnedOf({ pace, used, aside }: Learned): string {
  const { low, middle, high } = pace;
  const believed = `The animals are believed to need ${middle.toFixed(2)} times what the constants say, with 80 % of the belief between ${low.toFixed(2)} and ${high.toFixed(2)}`;
  const verdict =
    low > 1 ? "they are slower" : high < 1 ? "they are faster" : "they may still be as fast as the constants";
  const kept = aside.length === 0 ? "" : ` ${counted(aside.length, "entry", "entries")} kept aside.`;
  return used.length === 0
    ? `The log has taught nothing yet.${kept} ${believed}, as for any cohort.`
    : `Learned from ${counted(used.length, "entry", "entries")} of the log.${kept} ${believed}: ${verdict}.`;
}

/** How far the middle of two forecasts was from the adults of the log. */
export function hindsightOf(first: Comparison | null, now: Comparison | null): string {
  if (first?.biasDays == null || now?.biasDays == null) return "The log has no adults to look back from.";
  return (
    `Looking back from the end of the log: on average its adults came ${distance(first.biasDays)} the first ` +
    `evening expected the middle one, and ${distance(now.biasDays)} the evening chosen above did.`
  );
}

/** From when on a pace of 1 was ruled out, for the question at the end. */
export function answerOfPace(rows: readonly OutlookRow[], variation: number): string {
  const since = sureSince(rows);
  const cohorts = `With cohorts that differ by ${percent(variation)}`;
  if (since === null) return `${cohorts}, 1 is still within the band at the end of what is worked out.`;
  const first = rows[0]?.day ?? since.day;
  const days = Math.round((Date.parse(since.day) - Date.parse(first)) / 86_400_000);
  return `${cohorts}, a pace of 1 lies outside the band for good from ${longDate(since.day)} on, ${counted(days, "day")} after the find.`;
}

function adultsOf(forecast: Forecast) {
  return forecast.stages.find(({ stage }) => stage === "adult")?.begins;
}

function distance(days: number): string {
  return `${Math.abs(days).toFixed(1)} days ${days < 0 ? "before" : "after"}`;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
