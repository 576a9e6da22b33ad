// Entry point `moltline/plot`: results as rows, and figures of them with Observable Plot, which the caller
// hands in.

export { longDate, shortDate } from "./dates.ts";
export { type Figure, type FigureOptions, type PlotLibrary } from "./figure.ts";
export { figureSvg } from "./figure-svg.ts";

export { type DayRange, type TemperatureRow, temperatureRows } from "./days/temperature-rows.ts";
export { type TemperatureFigureOptions, temperatureFigure } from "./days/temperature-figure.ts";
export { type ThresholdPair, describeTemperatures } from "./days/temperature-words.ts";

export {
  type DegreeDayRow,
  type StageTotalRow,
  degreeDayRows,
  forecastDays,
  stageTotalRows,
} from "./days/degree-day-rows.ts";
export {
  type DegreeDayFigureOptions,
  degreeDayFigure,
  describeDegreeDays,
} from "./days/degree-day-figure.ts";

export {
  type LoggedStage,
  type SeenOn,
  type StageWindowRow,
  stageWindowRows,
} from "./stages/stage-window-rows.ts";
export { type StageWindowFigureOptions, stageWindowFigure } from "./stages/stage-window-figure.ts";
export { describeStageWindows } from "./stages/stage-window-words.ts";

export { type UpdatedWindowRow, updatedWindowRows } from "./stages/updated-window-rows.ts";
export { type UpdatedWindowFigureOptions, updatedWindowFigure } from "./stages/updated-window-figure.ts";
export { describeUpdatedWindows } from "./stages/updated-window-words.ts";

export { type Outlook, type OutlookRow, outlookRows } from "./stages/outlook-rows.ts";
export { type OutlookFigureOptions, paceFigure, windowWidthFigure } from "./stages/outlook-figures.ts";
export { describePaces, describeWindowWidths, sureSince } from "./stages/outlook-words.ts";

export { type StartRow, startRows } from "./plans/start-rows.ts";
export { type StartFigureOptions, startFigure } from "./plans/start-figure.ts";
export { describeStarts, startText } from "./plans/start-words.ts";

export { foliageFigure } from "./plans/foliage-figure.ts";
export { describeFoliage } from "./plans/foliage-words.ts";

export { type CurveRow, type CurveRowsOptions, curveRows } from "./days/curve-rows.ts";
export { type CurveFigureOptions, type CurveReading, curveFigure } from "./days/curve-figure.ts";
export { type CurveWordsOptions, describeCurve } from "./days/curve-words.ts";

export { addingUpFigure, describeAddingUp } from "./days/adding-up-figure.ts";

export { cutoffName, methodName } from "./methods/method-names.ts";
export { type MethodDifferenceRow, methodDifferenceRows } from "./methods/method-rows.ts";
export { type MethodFigureOptions, methodFigure } from "./methods/method-figure.ts";
export {
  type MethodMeasure,
  type MethodWordsOptions,
  describeMethodDifferences,
} from "./methods/method-words.ts";
export {
  type LeaveOutRow,
  type RateCurveRow,
  type TrialRow,
  leaveOutRows,
  rateCurveRows,
  trialRows,
} from "./trials/trial-rows.ts";
export { type ThresholdFigureOptions, thresholdFigure } from "./trials/threshold-figure.ts";
export { type DaysAtFigureOptions, daysAtFigure } from "./trials/days-at-figure.ts";
export { type RateCurveFigureOptions, rateCurveFigure } from "./trials/rate-curve-figure.ts";
export {
  type TrialWordsOptions,
  constantWithError,
  describeDaysAt,
  describeRateModels,
  describeThresholds,
  fastestOf,
  rateModelName,
  thresholdWithError,
} from "./trials/trial-words.ts";

export {
  type DayLengthRow,
  type LastEggRow,
  type SeasonOfPlace,
  type SeasonRow,
  dayLengthRows,
  lastEggRows,
  seasonRows,
} from "./season/season-rows.ts";
export { seasonFigure } from "./season/season-figure.ts";
export { lastEggsFigure } from "./season/last-eggs-figure.ts";
export { dayLengthFigure } from "./season/day-length-figure.ts";
export {
  describeDayLengths,
  describeLastEggs,
  describeSeasons,
  monthDayText,
} from "./season/season-words.ts";
