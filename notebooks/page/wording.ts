import type { Comparison } from "../../src/evaluate/hindsight/compare.ts";
import type { Forecast, IsoInstant } from "../../src/forecast/question/result.ts";
import { longDate } from "../../src/plot/index.ts";
import type { LifeCycle } from "../../src/species/life-cycle.ts";

/** A species for a list: its common and its Latin name. */
export function titleOf({ commonName, latinName }: LifeCycle): string {
  return `${commonName}, ${latinName}`;
}

/** When the adults are expected, in one sentence that holds every number. */
export function answerOf({ commonName, stages, found, shares }: Forecast): string {
  const adult = stages.find(({ stage }) => stage === "adult");
  if (!adult) return "The animals are adults already.";
  const { early, expected, late } = adult.begins;
  if (expected === null) return `No date for the adults. ${adult.absence?.message ?? ""}`.trim();
  const days = Math.round(
    (Date.parse(expected.slice(0, 10)) - Date.parse(found.at.slice(0, 10))) / 86_400_000,
  );
  const end =
    late === null ? "the late ones after the temperatures end" : `${percent(shares[2])} by ${longDate(late)}`;
  const start = early === null ? "" : `${percent(shares[0])} by ${longDate(early)} and `;
  return (
    `By about ${longDate(expected)} ${expected.slice(0, 4)}, ${days} days after the find, half of the animals should ` +
    `be adults (${commonName}); ${start}${end}.`
  );
}

/** How forecast and log agree, in words. */
export function agreementOf(comparison: Comparison | null, { invented }: { invented: boolean }): string {
  if (!comparison) return "Nothing to compare: it takes dates and a log of the same season.";
  const { biasDays, meanAbsoluteErrorDays, shareInside, shareExpectedInside } = comparison;
  if (biasDays === null || meanAbsoluteErrorDays === null) return "Nothing in the log could be compared.";
  const direction = biasDays < 0 ? "earlier" : "later";
  const inside =
    shareInside === null
      ? ""
      : ` ${percent(shareInside)} of the animals began within their windows, where ${percent(shareExpectedInside)} were to be expected.`;
  const caveat = invented
    ? " The log is invented, so this shows how to read a comparison and says nothing about the forecast."
    : "";
  return (
    `The animals began their stages ${Math.abs(biasDays).toFixed(1)} days ${direction} than expected on average. ` +
    `Earlier and later counted alike, they were ${meanAbsoluteErrorDays.toFixed(1)} days off.${inside}${caveat}`
  );
}

/** A day with its year, or a dash where there is none. */
export function dateOf(at: IsoInstant | null): string {
  return at === null ? "–" : `${longDate(at)} ${at.slice(0, 4)}`;
}

/** A share as per cent. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A number with its sign, or a dash where there is none. */
export function signed(value: number | null): string {
  return value === null ? "–" : `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)}`;
}
