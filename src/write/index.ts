export { calendarText } from "./calendar-text.ts";
export { comparisonText } from "./comparison-text.ts";
export { cautionsText, notesText } from "./remarks-text.ts";
export { degreeDayText } from "./degree-day-text.ts";
export { speciesListText, speciesText } from "./species-text.ts";
export { methodComparisonText } from "./method-comparison-text.ts";
export { thresholdText } from "./threshold-text.ts";
export { rateModelText } from "./rate-model-text.ts";
export { type HindcastSetting, hindcastText } from "./hindcast-text.ts";
export { type AdultsAsked, survivalText } from "./survival-text.ts";
export { roomText } from "./room-text.ts";
export { dailyTemperaturesCsv } from "./daily-temperatures-csv.ts";
export { releaseText, ruledOutText } from "./release-text.ts";
export type { ShownUnits } from "./release-words.ts";
export { type CalendarOptions, calendarIcs } from "./calendar-ics.ts";
export { forecastCsv } from "./forecast-csv.ts";
export { comparisonCsv } from "./comparison-csv.ts";
export { logCsv } from "./log-csv.ts";
export { type OldRow, logText } from "./log-text.ts";
export {
  DARWIN_CORE_TERMS,
  type DarwinCoreOptions,
  type DarwinCoreRow,
  darwinCoreCsv,
  darwinCoreRows,
} from "./darwin-core.ts";
export type { SharedPlace } from "./shared-place.ts";
export { planText } from "./plan-text.ts";
export { planPage } from "./plan-page.ts";
export { startForText } from "./start-for-text.ts";
export { seasonText } from "./season-text.ts";
