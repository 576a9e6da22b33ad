import type { DaySteps } from "./day-table.ts";
import { decimalLiteral } from "./literal.ts";

/** A total short of an amount by this share has reached it: engines add in orders of their own. */
const CRUMB = 1e-12;

/** A column of the first day on which the running total is at least an amount; NULL where it never is. @internal */
export function firstDaySql(amount: number, { own }: DaySteps): string {
  return `MIN(CASE WHEN ${own("total")} >= ${decimalLiteral(amount * (1 - CRUMB))} THEN ${own("day")} END)`;
}

/** Why the days of a group do not reach an amount: a hole in them, or their end. @internal */
export function absenceSql({ own }: DaySteps): string {
  return `CASE WHEN COUNT(${own("total")}) < COUNT(*) THEN 'gap' ELSE 'series-ends' END`;
}
