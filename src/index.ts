// units and errors
export {
  type Celsius,
  type DegreeDays,
  type Fahrenheit,
  type TemperatureUnit,
  celsiusDegreesToFahrenheit,
  celsiusToFahrenheit,
  fahrenheitDegreesToCelsius,
  fahrenheitToCelsius,
} from "./units.ts";
export { InputError, type InputErrorCode, type InputPath, type Naming, type Wording } from "./errors.ts";
export type { Note, NoteCode } from "./notes.ts";

// time
export { type CivilDay, addDays, civilDay, dayNumber } from "./time/civil-day.ts";
export type { Instant, Zone } from "./time/zone.ts";

// temperature
export type {
  ConstantTemperature,
  DailyTemperatures,
  JoinedTemperatures,
  Origin,
  TemperatureReadings,
  TemperatureSeries,
} from "./temperature/series.ts";
export { dailyTemperatures, lastDay } from "./temperature/daily.ts";
export { temperatureReadings } from "./temperature/readings.ts";
export { constantTemperature } from "./temperature/constant.ts";
export { joinTemperatures } from "./temperature/join.ts";
export { type LoggerDay, loggerDays } from "./temperature/logger-days.ts";
export { type Estimate, type RoomNote, type RoomRelation, relateRoom } from "./temperature/room-relation.ts";
export { roomNotes, roomTemperatures } from "./temperature/room-from-station.ts";
export { roomMembers } from "./temperature/room-members.ts";
export { shiftedTemperatures } from "./temperature/shift.ts";
export type { WeatherEnsemble, WeatherGroup } from "./temperature/ensemble.ts";
export {
  type EnsembleParts,
  type ForecastError,
  USUAL_FORECAST_ERROR,
  weatherEnsemble,
} from "./temperature/weather-ensemble.ts";
export { type NormalsWithVariation, normalsEnsemble } from "./temperature/normals-ensemble.ts";
export { type Gap, type GapPolicy, fillGaps, gapsOf } from "./temperature/gaps.ts";
export { type Normals, normalTemperatures, normalsOf } from "./temperature/normals.ts";

// diurnal
export {
  CURVE_METHODS,
  type CurveMethod,
  METHODS,
  type Method,
  SUN_METHODS,
  type SunMethod,
} from "./diurnal/method.ts";
export { sineExcess } from "./diurnal/sine.ts";
export { triangleExcess } from "./diurnal/triangle.ts";
export type { Place } from "./diurnal/place.ts";
export { dayLength } from "./diurnal/day-length.ts";
export type { TimelineOptions } from "./diurnal/part-arcs.ts";
export { type Timeline, timelineOf } from "./diurnal/timeline.ts";
export type { Arc } from "./diurnal/arc.ts";

// response
export {
  CUTOFFS,
  type Cutoff,
  type LinearResponse,
  type Thresholds,
  linearResponse,
} from "./response/linear.ts";
export type {
  RateGuess,
  RateModel,
  RateParameter,
  RateParameters,
  RatePoint,
} from "./response/rate-model.ts";
export { optimumOf, rateFunction } from "./response/rate-model.ts";
export { RATE_MODELS } from "./response/rate-models.ts";
export { briere1 } from "./response/briere-1.ts";
export { briere2 } from "./response/briere-2.ts";
export { lactin2 } from "./response/lactin-2.ts";
export { logan6 } from "./response/logan-6.ts";
export { sharpeSchoolfield, sharpeSchoolfieldHot } from "./response/sharpe-schoolfield.ts";

// clock
export { type DayExtremes, type DegreeDayOptions, degreeDays } from "./clock/degree-days.ts";
export { degreeDaysEach } from "./clock/degree-days-each.ts";
export { type AccumulateOptions, type AccumulatedDay, accumulateDegreeDays } from "./clock/accumulate.ts";
export { type ThermalClock, thermalClock } from "./clock/thermal-clock.ts";
export type { AccumulationClock } from "./clock/accumulation-clock.ts";
export { type DevelopmentClock, type DevelopmentRate, developmentClock } from "./clock/development-clock.ts";
export { type DayShape, rateSummationEffect } from "./clock/rate-summation.ts";

// species
export * from "./species/index.ts";
export { stageName } from "./species/stage-names.ts";

// cohort
export { type LogEntry, type LogFate, checkLog, fateOf, logEntry } from "./cohort/log.ts";
export {
  type Interval,
  SHARE_INTERVALS,
  type ShareInterval,
  binomialInterval,
} from "./cohort/binomial-interval.ts";
export { type LifeTableRow, type StageCounts, lifeTable } from "./cohort/life-table.ts";
export { type LogTable, type LogTableOptions, lifeTableFromLog } from "./cohort/life-table-from-log.ts";
export {
  type FollowedAnimal,
  type SurvivalInterval,
  type SurvivalStep,
  kaplanMeier,
} from "./cohort/kaplan-meier.ts";
export { survivalThrough } from "./cohort/survival-through.ts";
export { type AdultsExpected, type StageSurvival, expectedAdults } from "./cohort/expected-adults.ts";

// forecast
export { type ForecastInput, type Found, forecast } from "./forecast/forecast.ts";
export { type Chance, type ChanceOrAbsence, type MilestoneId, chanceBetween } from "./forecast/chance.ts";
export { type LearnOptions, learn } from "./forecast/learning/learn.ts";
export { type Belief, type Learned, type LearnedNode, lastStageBegan } from "./forecast/question/learned.ts";
export type { AgeGiven, AgeRange } from "./forecast/question/life-path.ts";
export type {
  Absence,
  DegreeDayTable,
  Forecast,
  IsoInstant,
  SignForecast,
  StageForecast,
  Window,
} from "./forecast/question/result.ts";

// evaluate
export {
  type CompareMethodsOptions,
  type MethodComparison,
  type MethodRow,
  compareMethods,
} from "./evaluate/methods/compare-methods.ts";
export type { Trial } from "./evaluate/threshold/trial.ts";
export type { LinearRange, RangeEnd } from "./evaluate/threshold/linear-range.ts";
export {
  THRESHOLD_METHODS,
  type ThresholdEstimate,
  type ThresholdLine,
  type ThresholdMethod,
  estimateThreshold,
  thresholdOfLine,
} from "./evaluate/threshold/estimate-threshold.ts";
export { type DaysAt, daysAt } from "./evaluate/threshold/days-at.ts";
export { type RateFit, type RateFitOptions, fitRateModel } from "./evaluate/rate-fit/fit-rate-model.ts";
export { type RankedModel, compareRateModels } from "./evaluate/rate-fit/compare-rate-models.ts";
export { bias, coverage, crps, meanAbsoluteError, skill } from "./evaluate/hindsight/scores.ts";
export { type HindcastInput, type HindcastRun, hindcast } from "./evaluate/hindsight/hindcast.ts";
export { type LeadScores, scoreHindcast } from "./evaluate/hindsight/hindcast-scores.ts";
export { type ComparedStage, type Comparison, compare } from "./evaluate/hindsight/compare.ts";

// rearing
export { type Caution, type CautionId, cautionsFor } from "./rearing/cautions.ts";
export {
  type HourlyWeather,
  type HourlyWeatherColumns,
  hourlyWeather,
} from "./rearing/release/hourly-weather.ts";
export { WIND_UNITS, type WindUnit, metresPerSecond, windIn } from "./rearing/release/wind-unit.ts";
export { RELEASE_CRITERIA, type ReleaseCriteria } from "./rearing/release/release-criteria.ts";
export type { ReasonUnits } from "./rearing/release/judge-hour.ts";
export { type ReleaseOptions, releaseHours, releaseRuledOut } from "./rearing/release/release-hours.ts";
export type { Emergences, SeenEmergence } from "./rearing/release/emergences.ts";
export type {
  ReleaseAspect,
  ReleaseHour,
  ReleaseReason,
  ReleaseReasonCode,
  WeatherOfHour,
} from "./rearing/release/release-hour.ts";
export type {
  EmergencePlan,
  ReleaseAbsence,
  ReleaseAdvice,
  ReleaseLook,
  ReleasePlan,
} from "./rearing/release/release-plan.ts";
export { startFor } from "./rearing/start/start-for.ts";
export {
  AIMS,
  type Aim,
  type Best,
  type DatePlan,
  type DateTarget,
  type Odds,
  type RoomPlan,
  type RoomTarget,
  type Scored,
  type StartAbsence,
  type StartDay,
  type StartTemperature,
  type Target,
} from "./rearing/start/start-plan.ts";
export { type HeatLimit, heatLimit } from "./rearing/start/heat-limit.ts";
export { season } from "./rearing/season/season.ts";
export { SEASON_LIMITS, preLayingOf } from "./rearing/season/season-limits.ts";
export type { Hemisphere, MonthDay } from "./rearing/season/season-calendar.ts";
export type {
  Brood,
  BroodOutlook,
  DateSpread,
  LastEggs,
  SeasonEnd,
  SeasonInput,
  SeasonOutlook,
  SeasonYear,
  YearShare,
} from "./rearing/season/season-result.ts";
export { dayPlan } from "./rearing/plan/day-plan.ts";
export type {
  CohortDay,
  ConflictCode,
  DayPlan,
  PlanCaution,
  PlanConflict,
  PlanDay,
  PlannedCohort,
  SentencePart,
} from "./rearing/plan/day-plan-result.ts";
export type { AdultsFate, PlanCohort } from "./rearing/plan/plan-cohort.ts";
export type { PlanOptions } from "./rearing/plan/plan-options.ts";
export { type DayPart, type PlanTask, TASK_CODES, type TaskCode } from "./rearing/plan/plan-task.ts";
export { PLAN_INSTRUCTIONS, type PlanInstruction } from "./rearing/plan/plan-instructions.ts";
export {
  type FeedingStage,
  type FoliageNeeds,
  foliageFromTotal,
  foliageNeedsFor,
} from "./rearing/plan/foliage-needs.ts";
export type { FoliageDay, FoliageOutlook, FoliageSupply, Leaves } from "./rearing/plan/foliage-outlook.ts";
export { type CageLimit, USUAL_CAGE_LIMIT } from "./rearing/plan/cage-limit.ts";
export { FRESH_PUPA_HOURS, QUIET_SHARE, REST_BEFORE_MOLT, type Rest } from "./rearing/plan/rest.ts";
export type { StageCount } from "./rearing/plan/stage-counts.ts";
