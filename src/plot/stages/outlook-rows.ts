import { givenList, given } from "../../given.ts";
import type { Learned } from "../../forecast/question/learned.ts";
import type { Forecast, IsoInstant } from "../../forecast/question/result.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import { instantOf } from "../dates.ts";

/** What is expected in the evening of one day of a season. */
export interface Outlook {
  readonly day: CivilDay;
  /** The forecast of that evening with what the log had taught by then. */
  readonly forecast: Forecast;
  readonly learned: Learned;
  /** The forecast of the same evening without the log. */
  readonly withoutLog: Forecast;
}

/** One day of a season: how well a stage's begin is known, and what is believed of the pace. */
export interface OutlookRow {
  readonly day: CivilDay;
  /** When the middle animal begins the stage, with the log; `null` where it is not forecast. */
  readonly expected: IsoInstant | null;
  /** Days from the early to the late animal, with the log; `null` where one of them is not known. */
  readonly windowDays: number | null;
  /** The same without the log. */
  readonly windowDaysWithoutLog: number | null;
  /** 10, 50 and 90 % points of the belief in the pace: above 1 the animals are slower than the constants say. */
  readonly paceLow: number;
  readonly paceMiddle: number;
  readonly paceHigh: number;
}

/**
 * How what is known of a season grows, one row for each day.
 * @param outlooks In the order of their days.
 * @param stage The stage whose begin is followed. Default `adult`.
 * @throws {InputError} `invalid-option`, `unknown-stage`.
 */
export function outlookRows(outlooks: readonly Outlook[], stage: StageId = "adult"): OutlookRow[] {
  givenList(outlooks, ["outlooks"]);
  stageName(stage);
  outlooks.forEach((one, i) => {
    given(
      one,
      ["outlooks", i],
      "an object with day, forecast, learned and withoutLog",
      "day",
      "forecast",
      "learned",
      "withoutLog",
    );
  });
  return outlooks.map(({ day, forecast, learned: { pace }, withoutLog }) => ({
    day,
    expected: beginOf(forecast, stage)?.expected ?? null,
    windowDays: windowDays(forecast, stage),
    windowDaysWithoutLog: windowDays(withoutLog, stage),
    paceLow: pace.low,
    paceMiddle: pace.middle,
    paceHigh: pace.high,
  }));
}

function beginOf(forecast: Forecast, stage: StageId) {
  return forecast.stages.find((one) => one.stage === stage)?.begins;
}

function windowDays(forecast: Forecast, stage: StageId): number | null {
  const { early = null, late = null } = beginOf(forecast, stage) ?? {};
  return early === null || late === null ? null : (instantOf(late) - instantOf(early)) / DAY_MS;
}
