import type { CurveMethod } from "../../diurnal/method.ts";
import type { Place } from "../../diurnal/place.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import type { AgeGiven } from "../../forecast/question/life-path.ts";
import type { Absence, Window } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { DailyTemperatures, TemperatureSeries } from "../../temperature/series.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { Celsius } from "../../units.ts";
import type { HeatLimit } from "./heat-limit.ts";

/** What is to happen on the wanted day: to a given animal, to at least one of them, to at least half of them. */
export const AIMS = ["each", "one", "half"] as const;

/** One of {@link AIMS}. */
export type Aim = (typeof AIMS)[number];

/** What is wanted, and of whom. */
export interface Target {
  readonly lifeCycle: LifeCycle;
  /** Stage they start in, how many (default 1), and how far into it (default `unknown`, as in `forecast`). */
  readonly start: { readonly stage: StageId; readonly count?: number; readonly age?: AgeGiven };
  /** What is to be seen. Default `adult`, the emergence. */
  readonly milestone?: MilestoneId;
  /** On which civil day. */
  readonly day: CivilDay;
  /** Between which times of that day, such as `["09:00", "15:00"]`. Default: the whole day. */
  readonly hours?: readonly [from: string, to: string];
  readonly zone?: string | null;
  readonly method?: CurveMethod;
  readonly place?: Place | null;
  /** What to make likely. Default `one`: someone is there to see it. */
  readonly aim?: Aim;
  /** A limit of one's own for held heat, °C, below the known one. */
  readonly hottest?: Celsius;
}

/** Which day to start on. */
export interface DateTarget extends Target {
  /** What the days will be like; or give `pastYears` alone. */
  readonly temperatures?: TemperatureSeries | WeatherEnsemble;
  /** Daily temperatures of past years at the place, for a day too far ahead to know anything of its weather. */
  readonly pastYears?: DailyTemperatures;
  /** Days to choose from. Default: from those that would certainly be too early up to the wanted day. */
  readonly dates?: { readonly from?: CivilDay; readonly to?: CivilDay };
}

/** At which temperature to keep them from a day on. */
export interface RoomTarget extends Target {
  /** Day or time from which they are kept there; a day counts from noon. */
  readonly on: string;
  /** Temperatures that the room can be kept at, °C. */
  readonly constant: { readonly from: Celsius; readonly to: Celsius };
}

/** How likely it is, 0 to 1. */
export interface Odds {
  /** What the aim asks for: one of the three below. */
  readonly chance: number;
  /** For each animal. */
  readonly each: number;
  /** That at least one does it in time, and that at least half of them do. */
  readonly one: number;
  readonly half: number;
  /** That an animal does it before, and after. */
  readonly early: number;
  readonly late: number;
}

/** Why there is no chance to name, or no start to advise. */
export interface StartAbsence {
  /** As in a forecast; `no-temperatures`: none cover the start; `out-of-reach`: no start hits the day. */
  readonly reason: Absence["reason"] | "no-temperatures" | "out-of-reach";
  /** A plain sentence. */
  readonly message: string;
}

/** A start with its odds, or with the reason why they are not known. */
export type Scored<Start> = Start &
  ({ readonly odds: Odds; readonly absence: null } | { readonly odds: null; readonly absence: StartAbsence });

export interface StartDay {
  /** Counted from its noon. */
  readonly on: CivilDay;
}

export interface StartTemperature {
  /** °C */
  readonly temperature: Celsius;
}

interface Plan<Start> {
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  readonly start: {
    readonly stage: StageId;
    readonly count: number;
    /** Shares of the stage done, from the least to the greatest possible. */
    readonly age: { readonly from: number; readonly to: number };
  };
  readonly milestone: MilestoneId;
  readonly day: CivilDay;
  readonly hours: readonly [from: string, to: string] | null;
  readonly zone: string | null;
  readonly aim: Aim;
  /** Every start that was looked at, the best first, those without odds last. */
  readonly ranked: readonly Scored<Start>[];
  readonly limit: HeatLimit;
  readonly notes: readonly Note[];
  /** Why `best` is `null`; `null` where it is not. */
  readonly absence: StartAbsence | null;
}

/** The best start and when it leads to the milestone. */
export type Best<Start> = Start & { readonly odds: Odds; readonly window: Window };

export interface DatePlan extends Plan<StartDay> {
  readonly kind: "date";
  readonly best: Best<StartDay> | null;
}

export interface RoomPlan extends Plan<StartTemperature> {
  readonly kind: "room";
  readonly on: string;
  /** With the chance that is left where the room is 1 °C cooler or warmer than meant. */
  readonly best: (Best<StartTemperature> & { readonly ifCooler: number; readonly ifWarmer: number }) | null;
}
