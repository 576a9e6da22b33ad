import type { CurveMethod } from "../diurnal/method.ts";
import type { Note, NoteCode } from "../notes.ts";
import type { LifeCycle } from "../species/life-cycle.ts";
import type { WeatherEnsemble } from "../temperature/ensemble.ts";
import type { TemperatureSeries } from "../temperature/series.ts";
import { type Instant, type Zone, startOfDay } from "../time/zone.ts";
import type { Learned } from "./learned.ts";
import type { LifePath } from "./life-path.ts";
import type { DegreeDayTable, StageForecast } from "./result.ts";
import type { StageClock } from "./stage-clock.ts";

/** What the notes of a forecast are made from. */
export interface NoteContext {
  readonly lifeCycle: LifeCycle;
  readonly path: LifePath;
  readonly zone: Zone;
  readonly method: CurveMethod;
  readonly timeAssumed: boolean;
  readonly temperatures: TemperatureSeries | WeatherEnsemble;
  readonly learned: Learned | undefined;
  readonly clocks: readonly StageClock[];
  readonly tables: readonly DegreeDayTable[];
  readonly usedUntil: Instant;
  readonly stages: readonly StageForecast[];
}

/** The days of the first table whose temperatures the dates rest on. */
export function usedDays({ tables, usedUntil, zone }: NoteContext): readonly string[] {
  return (tables[0]?.days ?? []).filter((day) => startOfDay(day, zone) < usedUntil);
}

/** A note. */
export function note(code: NoteCode, message: string): Note {
  return { code, message };
}
