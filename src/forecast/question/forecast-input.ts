import { type CurveMethod, knownCurveMethod } from "../../diurnal/method.ts";
import { type Place, checkedPlace } from "../../diurnal/place.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import { checkLifeCycle } from "../../species/check-life-cycle.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import { knownSeries } from "../../temperature/known-series.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type Instant, type Zone, knownZone, noonOf, parseMoment } from "../../time/zone.ts";
import type { Learned } from "./learned.ts";
import { type AgeGiven, type LifePath, lifePath } from "./life-path.ts";

/** The animals that were found. */
export interface Found {
  readonly stage: StageId;
  /** Day (`2026-06-03`) or time (`2026-06-03T17:30`) of the find, ISO 8601. A day alone counts as noon. */
  readonly on: string;
  /** Number of animals. Default 1. */
  readonly count?: number;
  /** How far into the stage they were. Default `unknown`: anywhere in it, which the windows carry. */
  readonly age?: AgeGiven;
}

/** What a forecast needs. */
export interface ForecastInput {
  readonly lifeCycle: LifeCycle;
  readonly found: Found;
  /** Temperatures, or an ensemble of what they may become. */
  readonly temperatures: TemperatureSeries | WeatherEnsemble;
  /** IANA zone of the place. Without one, times are those of the clock on the wall. */
  readonly zone?: string | null;
  /** How a day's temperature runs between its extremes. Default `single-sine`. Readings need none. */
  readonly method?: CurveMethod;
  /** Where it is: needed by the methods that follow the sun, and a zone with it. */
  readonly place?: Place | null;
  /** What a log taught, from `learn`: the forecast goes on from the last stage seen, at the pace learned. */
  readonly learned?: Learned;
  /** Shares of animals at early, expected and late. Default 0.1, 0.5 and 0.9. */
  readonly shares?: readonly [number, number, number];
}

/** A checked input: where the animals stand and when. */
export interface ForecastStart {
  readonly zone: Zone;
  readonly method: CurveMethod;
  readonly place: Place | null;
  readonly count: number;
  readonly path: LifePath;
  readonly instant: Instant;
  readonly timeAssumed: boolean;
}

/**
 * Checks the input of a forecast.
 * @throws {InputError} For anything in it that cannot be used.
 */
export function startOf(forecastInput: ForecastInput): ForecastStart {
  given(
    forecastInput,
    ["input"],
    "an object with lifeCycle, found and temperatures",
    "lifeCycle",
    "found",
    "temperatures",
  );
  const { lifeCycle, found, ...input } = forecastInput;
  checkLifeCycle(lifeCycle);
  given(found, ["found"], "an object with stage and on");
  checkTemperatures(input.temperatures);
  if (input.learned !== undefined)
    given(input.learned, ["learned"], "what learn returned, or left out", "pace", "nodes", "used", "notes");
  const zone: Zone = input.zone === undefined || input.zone === null ? null : knownZone(input.zone);
  const method = knownCurveMethod(input.method ?? "single-sine");
  const place = input.place == null ? null : checkedPlace(input.place);
  const count = checkedCount(found.count ?? 1);
  const path = lifePath(lifeCycle, found.stage, found.age ?? "unknown");
  return { zone, method, place, count, path, ...foundAt(found.on, zone) };
}

function checkTemperatures(temperatures: TemperatureSeries | WeatherEnsemble): void {
  given(temperatures, ["temperatures"], "a series of temperatures or an ensemble", "kind");
  if (temperatures.kind !== "ensemble") {
    knownSeries(temperatures, ["temperatures"]);
    return;
  }
  given(temperatures, ["temperatures"], "an ensemble, as weatherEnsemble makes it", "groups", "from");
}

function checkedCount(count: number): number {
  if (Number.isSafeInteger(count) && count >= 1) return count;
  throw new InputError("invalid-found", `found.count is ${shown(count)}; it must be a whole number from 1.`, {
    path: ["found", "count"],
    value: count,
  });
}

function foundAt(on: string, zone: Zone): { instant: Instant; timeAssumed: boolean } {
  const { day, instant } = parseMoment(on, zone, ["found", "on"]);
  if (instant !== null) return { instant, timeAssumed: false };
  return { instant: noonOf(day, zone), timeAssumed: true };
}
