import type { Interval } from "../../cohort/binomial-interval.ts";
import type { CurveMethod } from "../../diurnal/method.ts";
import type { Place } from "../../diurnal/place.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import type { Note } from "../../notes.ts";
import type { LifeCycle, Sourced } from "../../species/life-cycle.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { Celsius, DegreeDays } from "../../units.ts";
import type { Hemisphere, MonthDay } from "./season-calendar.ts";

/** What to ask of the past years. */
export interface SeasonInput {
  readonly lifeCycle: LifeCycle;
  /** Daily temperatures of a year or more, without gaps. */
  readonly temperatures: DailyTemperatures;
  /** Where it is: for the day length, for the methods that follow the sun, and for which half of the year is summer. */
  readonly place?: Place | null;
  /** Which half of the earth. Default: by the place, else by the warmer half of the record's years. */
  readonly hemisphere?: Hemisphere;
  readonly zone?: string | null;
  readonly method?: CurveMethod;
  /**
   * When the first eggs are there: a month and date such as `05-20`, or degree-days since midwinter above the first
   * stage's threshold. Default: as soon as the temperatures let an egg develop, which is no sign that one is there.
   */
  readonly firstEggs?: MonthDay | { readonly degreeDays: DegreeDays };
  /** Days from emergence to the first eggs. Default: what is published, else no further broods are reckoned. */
  readonly preLayingDays?: number;
  /** A day after midsummer whose minimum is below it ends the season, °C; `null` for no such end. Default 0. */
  readonly frostBelow?: Celsius | null;
  /** What the last eggs must reach before the season ends. Default `adult`. */
  readonly milestone?: MilestoneId;
  /** Share of the animals that must reach it. Default 0.9. */
  readonly share?: number;
  /** How sure the intervals are. Default 0.95. */
  readonly level?: number;
}

/** One brood of one year, at the middle animal's pace. */
export interface Brood {
  readonly number: number;
  readonly eggs: CivilDay;
  /** When they emerge; `null` when that is not before the season ends. */
  readonly adults: CivilDay | null;
}

/** What ended a season: frost, cold that stops development, or nothing up to the next midsummer. */
export type SeasonEnd = "frost" | "cold" | "nothing";

/** One season of the record. */
export interface SeasonYear {
  /** `2014`, or `2014/15` where it crosses the new year. */
  readonly label: string;
  readonly firstEggs: CivilDay | null;
  readonly broods: readonly Brood[];
  /** Broods whose adults emerge before the season ends. */
  readonly complete: number;
  /** The last day on which eggs can be laid for the share of animals to make it; `null`: none, or no last one. */
  readonly lastEggs: CivilDay | null;
  readonly firstFrost: CivilDay | null;
  /** The day from which development stands still. */
  readonly standstill: CivilDay | null;
  readonly endsBy: SeasonEnd;
  readonly ends: CivilDay | null;
}

/** The same event over the years, as month and date. */
export interface DateSpread {
  readonly earliest: MonthDay;
  readonly middle: MonthDay;
  readonly latest: MonthDay;
}

/** In how many of the years something held, as a share with its binomial interval. */
export interface YearShare extends Interval {
  readonly years: number;
  readonly of: number;
  readonly share: number;
}

export interface BroodOutlook extends YearShare {
  readonly number: number;
  /** Over the years that completed it; `null` where none did. */
  readonly eggs: DateSpread | null;
  readonly adults: DateSpread | null;
  /** Day length on the middle date of emergence, hours, and how it changes, minutes a week; `null` without a place. */
  readonly dayLength: { readonly hours: number; readonly minutesAWeek: number } | null;
}

export interface LastEggs {
  /** For eggs laid on a date: the years in which the share of animals would have made it. In order of the season. */
  readonly byDate: readonly (YearShare & { readonly date: MonthDay })[];
  readonly spread: DateSpread | null;
  /** A date that the coming year's last eggs come after with this chance, were such dates normally distributed. */
  readonly prudent: { readonly date: MonthDay; readonly chance: number } | null;
}

/** What {@link season} returns: plain data. */
export interface SeasonOutlook {
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  readonly hemisphere: Hemisphere;
  readonly milestone: MilestoneId;
  readonly share: number;
  readonly level: number;
  readonly frostBelow: Celsius | null;
  readonly preLaying: Sourced | null;
  readonly firstEggsBy: "date" | "degree-days" | "temperature";
  readonly firstEggs: DateSpread | null;
  readonly years: readonly SeasonYear[];
  /** Seasons of the record that it does not cover far enough. */
  readonly leftOut: readonly string[];
  readonly broods: readonly BroodOutlook[];
  readonly lastEggs: LastEggs;
  readonly notes: readonly Note[];
}
