import { given } from "../../given.ts";
import type { Interval } from "../../cohort/binomial-interval.ts";
import type { AdultsExpected } from "../../cohort/expected-adults.ts";
import type { LogTable } from "../../cohort/life-table-from-log.ts";
import { foundAnimals } from "./calendar-text.ts";
import { stageName } from "../../species/stage-names.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { bullet, columns, wrapped } from "../layout/text-layout.ts";

/** Adults to expect of animals like those of a log. */
export interface AdultsAsked {
  readonly found: { readonly stage: StageId; readonly count: number };
  /** `null` where the log follows no animal through some stage. */
  readonly expected: AdultsExpected | null;
}

/**
 * A life table from a log as plain text, at most 80 columns, with the adults to expect of animals like these.
 * @param table What `lifeTableFromLog` returned, with intervals of 95 %.
 */
export function survivalText(table: LogTable, asked: AdultsAsked): string {
  given(table, ["table"], "what lifeTableFromLog returns", "rows", "remarks");
  given(asked, ["asked"], "an object with found and expected", "found");
  const { found, expected } = asked;
  const { rows, reached, remarks } = table;
  const page = columns(
    [
      ["", "began", "died", "unknown", "lived", "95 % sure", "so far", "95 % sure"],
      ...rows.map((row) => [
        `  ${stageName(row.stage)}`,
        String(row.entered),
        String(row.died),
        String(row.censored),
        percent(row.survival),
        between(row.survivalInterval),
        percent(row.cumulative),
        between(row.cumulativeInterval),
      ]),
      ["  adult", String(reached), "", "", "", "", "", ""],
    ],
    [1, 2, 3, 4, 5, 6, 7],
  );
  const [first] = rows;
  const animals = first === undefined ? "" : foundAnimals({ stage: first.stage, count: first.entered });
  const said = [
    ...remarks.map(inPlainStages),
    ...rows.flatMap(({ stage, joined }) =>
      joined > 0 ? [`${joined} came to the cohort as ${stageName(stage)}.`] : [],
    ),
    ...reasonsText(rows),
  ];
  return [
    "HOW MANY LIVED",
    wrapped(
      `${animals}; ${reached === 0 ? "none has" : `${reached} ${reached === 1 ? "has" : "have"}`} become adult by the end of your log.`,
    ),
    "",
    page,
    "",
    wrapped(
      "Lived: how many of the stage's animals lived through it. So far: how many live from the begin of the first stage to the end of this one. Unknown: lost, or still in the stage; each counts as half an animal.",
    ),
    ...(said.length === 0 ? [] : ["", ...said.map((text) => bullet(text))]),
    "",
    "HOW MANY ADULTS TO EXPECT",
    wrapped(adultsText(found, expected)),
    ...(rows.some(({ died }) => died > 0)
      ? [
          "",
          wrapped(
            "Take sick and dead animals out at once, wash your hands, and clean the container before it is used again.",
          ),
        ]
      : []),
  ].join("\n");
}

/** Why shares are missing, stages with the same reason together. Where all died, the shares are there and say so. */
function reasonsText(rows: LogTable["rows"]): string[] {
  const stages = new Map<string, string[]>();
  for (const { stage, reason, cumulative } of rows) {
    if (reason === null || cumulative !== null) continue;
    stages.set(reason, [...(stages.get(reason) ?? []), stageName(stage)]);
  }
  return [...stages].map(([reason, names]) => `${names.join(", ")}: ${reason}`);
}

function adultsText(found: AdultsAsked["found"], expected: AdultsExpected | null): string {
  const animals = foundAnimals(found);
  if (expected === null)
    return `That cannot be said of ${animals}: the log follows no animal to the end of some stage.`;
  const { mean, interval } = expected;
  return `Of ${animals}: about ${mean.toFixed(1)} on average, and ${interval.lower} to ${interval.upper} with a chance of 95 %. This takes them to be at the begin of their stage and to fare as those of your log did, each on its own. A disease, a dry cage or a hot day takes many at once; then there are fewer.`;
}

/** The library's sentence names stages by id. */
function inPlainStages(remark: string): string {
  return remark.replace(
    /\binstar-([1-5])\b/g,
    (_, number: string) => `${ORDINALS[Number(number) - 1] ?? number} instar`,
  );
}

const ORDINALS = ["first", "second", "third", "fourth", "fifth"];

function percent(share: number | null): string {
  return share === null ? "-" : `${Math.round(share * 100)} %`;
}

function between(interval: Interval | null): string {
  return interval === null
    ? "-"
    : `${Math.round(interval.lower * 100)} to ${Math.round(interval.upper * 100)}`;
}
