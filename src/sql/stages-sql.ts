import type { Method } from "../diurnal/method.ts";
import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import { type Milestone, lifePath } from "../forecast/question/life-path.ts";
import type { Thresholds } from "../response/linear.ts";
import { checkLifeCycle } from "../species/check-life-cycle.ts";
import type { LifeCycle, StageId, StageNeeds } from "../species/life-cycle.ts";
import { type DayTable, STEP, totalSteps } from "./day-table.ts";
import { asDouble } from "./degree-days-sql.ts";
import type { SqlDialect } from "./dialect.ts";
import { decimalLiteral } from "./literal.ts";
import { absenceSql, firstDaySql } from "./milestone-query.ts";

/** Where the animals begin, and the method. */
export interface StagesOptions {
  /** The stage that has just begun on the first day of each season. Default: the first of the life cycle. */
  readonly stage?: StageId;
  /** Default `single-sine`. */
  readonly method?: Method;
}

/**
 * A query for the day by whose end the middle animal reaches each later stage, one row for each station,
 * season and stage: `ordinal`, `stage`, `degree_days` (from the start), `reached_on`, and `absence` as in
 * `reachedSql`. The signs and stages are those of a forecast, so the hang (`prepupa`) and `darkening` are
 * among them where the species has them. Widths of windows are the forecast's business, not this query's.
 * @param source The table and its columns, °C; names are checked and quoted.
 * @param lifeCycle A life cycle whose stages, from the given one on, share thresholds and cutoff.
 * @throws {InputError} `invalid-life-cycle` for one that is not valid, or whose stages run on more than one
 *   clock; `unknown-stage`; `invalid-method`; `invalid-option` for a name that cannot be quoted.
 * @example
 * stagesSql({ table: "days", day: "on", min: "tmin", max: "tmax" }, danausPlexippus, { stage: "pupa" }).includes("'adult'") // → true
 */
export function stagesSql(
  source: DayTable,
  lifeCycle: LifeCycle,
  options: StagesOptions = {},
  dialect?: SqlDialect,
): string {
  given(options, ["options"], "an object of options");
  const { stages } = checkLifeCycle(lifeCycle);
  const { period, milestones } = lifePath(lifeCycle, options.stage ?? stages[0]?.stage ?? "egg", "new");
  const thresholds = oneClock(lifeCycle, period);
  const before = totalSteps(source, { ...thresholds, method: options.method ?? "single-sine" }, dialect);
  const { steps, own, groups } = before;
  const amounts = milestones.map((milestone) => amountUntil(stages, period, milestone));
  const days = amounts.map((amount, i) => `${firstDaySql(amount, before)} AS ${own(`day_${i + 1}`)}`);
  const wanted = milestones.map(
    ({ id }, i) =>
      `SELECT ${i + 1} AS ${own("ordinal")}, '${id}' AS ${own("stage")}, ${asDouble(decimalLiteral(amounts[i] ?? 0), before.writing)} AS ${own("degree_days")}`,
  );
  const found = milestones.map((_, i) => `WHEN ${i + 1} THEN ${own(`day_${i + 1}`)}`).join(" ");
  const reached = `CASE ${own("ordinal")} ${found} END`;
  const last = [
    ...groups,
    ...["ordinal", "stage", "degree_days"].map(own),
    `${reached} AS ${own("reached_on")}`,
    `CASE WHEN ${reached} IS NULL THEN ${own("why_not")} END AS ${own("absence")}`,
  ];
  return `WITH ${steps.join(", ")}, ${own(STEP.reached)} AS (
  SELECT ${[...groups, ...days, `${absenceSql(before)} AS ${own("why_not")}`].join(",\n    ")}
  FROM ${own(STEP.totals)}${groups.length === 0 ? "" : `\n  GROUP BY ${groups.join(", ")}`}
), ${own(STEP.wanted)} AS (
  ${wanted.join("\n  UNION ALL ")}
)
SELECT ${last.join(",\n  ")}
FROM ${own(STEP.reached)} CROSS JOIN ${own(STEP.wanted)}`;
}

/** Degree-days of the middle animal from the begin of its first stage to a milestone. */
function amountUntil(stages: readonly StageNeeds[], first: number, { period, share }: Milestone): number {
  return stages
    .slice(first, period + 1)
    .reduce((sum, { degreeDays }, i) => sum + degreeDays.value * (first + i === period ? share : 1), 0);
}

/** The thresholds that all stages from one on share. */
function oneClock({ species, stages }: LifeCycle, first: number): Thresholds {
  const [one, ...others] = stages.slice(first).map(({ stage, lower, upper, cutoff }) => ({
    stage,
    lower: lower.value,
    upper: upper?.value ?? null,
    cutoff,
  }));
  const other = others.find(
    ({ lower, upper, cutoff }) => lower !== one?.lower || upper !== one.upper || cutoff !== one.cutoff,
  );
  if (one !== undefined && other === undefined) return one;
  throw new InputError(
    "invalid-life-cycle",
    `${species} counts ${one?.stage} above ${one?.lower} °C and ${other?.stage} by other thresholds (${other?.lower} °C); one running total cannot hold two clocks. Ask for each part with reachedSql, or forecast the station with the library.`,
    { path: ["stages", other?.stage ?? ""], value: other?.lower },
  );
}
