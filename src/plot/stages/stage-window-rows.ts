import { given, givenList } from "../../given.ts";
import type { LogFate } from "../../cohort/log.ts";
import type { Forecast, IsoInstant, SignForecast, StageForecast } from "../../forecast/question/result.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import type { CivilDay } from "../../time/civil-day.ts";

/** What a log says about a stage: the part of a log entry that a figure needs. */
export interface LoggedStage {
  readonly stage: StageId;
  /** Civil day or ISO instant on which it was seen to have begun. */
  readonly on: string;
  readonly count: number;
  /** Of dead and lost animals no begin was seen: they are left out. Default `seen`. */
  readonly fate?: LogFate;
}

/** Animals that were seen to have begun a stage on one day. */
export interface SeenOn {
  readonly day: CivilDay;
  readonly count: number;
}

/** One predicted begin, beside what was seen. */
export interface StageWindowRow {
  /** The stage that begins, or the sign that shows. */
  readonly begins: StageId | SignForecast["sign"];
  readonly name: string;
  /** When the early, the middle and the late animal begin; `null` beyond the temperatures. */
  readonly early: IsoInstant | null;
  readonly expected: IsoInstant | null;
  readonly late: IsoInstant | null;
  /** Why one of the three is `null`, in a plain sentence; `null` where none is. */
  readonly absence: string | null;
  /** The days on which the log has it, in order; empty where the log has it not. */
  readonly seen: readonly SeenOn[];
}

const SIGN_NAMES: Readonly<Record<SignForecast["sign"], string>> = { darkening: "pupa darkens" };

/**
 * The windows of a forecast in the order of life, each beside the days on which a log has that stage.
 * @param log Entries of a log. Default none.
 */
export function stageWindowRows(forecast: Forecast, log: readonly LoggedStage[] = []): StageWindowRow[] {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  givenList(log, ["log"]);
  const rows = forecast.stages.map((stage) =>
    rowOf(stage.stage, stageName(stage.stage), stage, seenOn(log, stage.stage)),
  );
  const signs = forecast.signs.map((sign) => rowOf(sign.sign, SIGN_NAMES[sign.sign], sign, []));
  // The signs so far are all of the pupa, so they stand before the adult.
  const adult = rows.findIndex((row) => row.begins === "adult");
  return adult < 0 ? [...rows, ...signs] : rows.toSpliced(adult, 0, ...signs);
}

function rowOf(
  begins: StageWindowRow["begins"],
  name: string,
  { begins: window, absence }: StageForecast | SignForecast,
  seen: readonly SeenOn[],
): StageWindowRow {
  const { early, expected, late } = window;
  return { begins, name, early, expected, late, absence: absence?.message ?? null, seen };
}

function seenOn(log: readonly LoggedStage[], stage: StageId): SeenOn[] {
  const counts = new Map<CivilDay, number>();
  for (const { on, count, fate = "seen", ...entry } of log) {
    const day = on.slice(0, 10);
    if (entry.stage === stage && fate === "seen") counts.set(day, (counts.get(day) ?? 0) + count);
  }
  return [...counts].map(([day, count]) => ({ day, count })).sort((a, b) => (a.day < b.day ? -1 : 1));
}
