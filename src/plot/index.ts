// Entry point `moltline/plot`: results as rows, and figures of them with Observable Plot, which the caller
// hands in.

export { longDate, shortDate } from "./dates.ts";
export { type Figure, type FigureOptions, type PlotLibrary } from "./figure.ts";
export { figureSvg } from "./figure-svg.ts";

export { type DayRange, type TemperatureRow, temperatureRows } from "./temperature-rows.ts";
export { type TemperatureFigureOptions, temperatureFigure } from "./temperature-figure.ts";
export { type ThresholdPair, describeTemperatures } from "./temperature-words.ts";

export {
  type DegreeDayRow,
  type StageTotalRow,
  degreeDayRows,
  forecastDays,
  stageTotalRows,
} from "./degree-day-rows.ts";
export { type DegreeDayFigureOptions, degreeDayFigure, describeDegreeDays } from "./degree-day-figure.ts";

export { type LoggedStage, type SeenOn, type StageWindowRow, stageWindowRows } from "./stage-window-rows.ts";
export { type StageWindowFigureOptions, stageWindowFigure } from "./stage-window-figure.ts";
export { describeStageWindows } from "./stage-window-words.ts";

export { type UpdatedWindowRow, updatedWindowRows } from "./updated-window-rows.ts";
export { type UpdatedWindowFigureOptions, updatedWindowFigure } from "./updated-window-figure.ts";
export { describeUpdatedWindows } from "./updated-window-words.ts";

export { type Outlook, type OutlookRow, outlookRows } from "./outlook-rows.ts";
export { type OutlookFigureOptions, paceFigure, windowWidthFigure } from "./outlook-figures.ts";
export { describePaces, describeWindowWidths, sureSince } from "./outlook-words.ts";

export { type StartRow, startRows } from "./start-rows.ts";
export { type StartFigureOptions, startFigure } from "./start-figure.ts";
export { describeStarts, startText } from "./start-words.ts";

export { foliageFigure } from "./foliage-figure.ts";
export { describeFoliage } from "./foliage-words.ts";

export { type CurveRow, type CurveRowsOptions, curveRows } from "./curve-rows.ts";
export { type CurveFigureOptions, type CurveReading, curveFigure } from "./curve-figure.ts";
export { type CurveWordsOptions, describeCurve } from "./curve-words.ts";

export { addingUpFigure, describeAddingUp } from "./adding-up-figure.ts";

export { cutoffName, methodName } from "./method-names.ts";
export { type MethodDifferenceRow, methodDifferenceRows } from "./method-rows.ts";
export { type MethodFigureOptions, methodFigure } from "./method-figure.ts";
export { type MethodMeasure, describeMethodDifferences } from "./method-words.ts";
export {
  type LeaveOutRow,
  type RateCurveRow,
  type TrialRow,
  leaveOutRows,
  rateCurveRows,
  trialRows,
} from "./trial-rows.ts";
export { type ThresholdFigureOptions, thresholdFigure } from "./threshold-figure.ts";
export { type DaysAtFigureOptions, daysAtFigure } from "./days-at-figure.ts";
export { type RateCurveFigureOptions, rateCurveFigure } from "./rate-curve-figure.ts";
export {
  type TrialWordsOptions,
  constantWithError,
  describeDaysAt,
  describeRateModels,
  describeThresholds,
  fastestOf,
  rateModelName,
  thresholdWithError,
} from "./trial-words.ts";

export {
  type DayLengthRow,
  type LastEggRow,
  type SeasonOfPlace,
  type SeasonRow,
  dayLengthRows,
  lastEggRows,
  seasonRows,
} from "./season-rows.ts";
export { seasonFigure } from "./season-figure.ts";
export { lastEggsFigure } from "./last-eggs-figure.ts";
export { dayLengthFigure } from "./day-length-figure.ts";
export { describeDayLengths, describeLastEggs, describeSeasons, monthDayText } from "./season-words.ts";
