export type { SqlDialect } from "./dialect.ts";
export type { SqlName } from "./name.ts";
export { type ExtremeColumns, degreeDaysSql, reversedDaySql } from "./degree-days-sql.ts";
export type { DayTable } from "./day-table.ts";
export { readingsCheckSql } from "./readings-check-sql.ts";
export { degreeDayRowsSql } from "./degree-day-rows-sql.ts";
export { type ReachedOptions, reachedSql } from "./reached-sql.ts";
export { type StagesOptions, stagesSql } from "./stages-sql.ts";
