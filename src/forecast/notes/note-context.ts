import type { CurveMethod } from "../../diurnal/method.ts";
import type { Note, NoteCode } from "../../notes.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type Instant, type Zone, startOfDay } from "../../time/zone.ts";
import type { Learned } from "../question/learned.ts";
import type { LifePath } from "../question/life-path.ts";
import type { DegreeDayTable, StageForecast } from "../question/result.ts";
import type { StageClock } from "../clocks/stage-clock.ts";

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
  /** Degree-days on the first clock, and the instants at which the days of the table end. */
  readonly table: DegreeDayTable | null;
  readonly ends: readonly Instant[];
  readonly usedUntil: Instant;
  readonly stages: readonly StageForecast[];
}

/** How many days of the table, from the first on, have temperatures that the dates rest on. */
export function usedDays({ table, ends, usedUntil, zone }: NoteContext): number {
  const [first] = table?.days ?? [];
  if (first === undefined || startOfDay(first, zone) >= usedUntil) return 0;
  let count = 1;
  // A day begins when the one before it ends.
  while (count < ends.length && (ends[count - 1] ?? Infinity) < usedUntil) count++;
  return count;
}

/** A note. */
export function note(code: NoteCode, message: string): Note {
  return { code, message };
}
