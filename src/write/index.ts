export { calendarText } from "./pages/calendar-text.ts";
export { comparisonText } from "./pages/comparison-text.ts";
export { cautionsText, notesText } from "./layout/remarks-text.ts";
export { degreeDayText } from "./pages/degree-day-text.ts";
export { speciesListText, speciesText } from "./pages/species-text.ts";
export { methodComparisonText } from "./pages/method-comparison-text.ts";
export { thresholdText } from "./pages/threshold-text.ts";
export { rateModelText } from "./pages/rate-model-text.ts";
export { type HindcastSetting, hindcastText } from "./pages/hindcast-text.ts";
export { type AdultsAsked, survivalText } from "./pages/survival-text.ts";
export { roomText } from "./pages/room-text.ts";
export { dailyTemperaturesCsv } from "./tables/daily-temperatures-csv.ts";
export { releaseText, ruledOutText } from "./pages/release-text.ts";
export type { ShownUnits } from "./pages/release-words.ts";
export { type CalendarOptions, calendarIcs } from "./tables/calendar-ics.ts";
export { forecastCsv } from "./tables/forecast-csv.ts";
export { comparisonCsv } from "./tables/comparison-csv.ts";
export { logCsv } from "./tables/log-csv.ts";
export { type OldRow, logText } from "./pages/log-text.ts";
export {
  DARWIN_CORE_TERMS,
  type DarwinCoreOptions,
  type DarwinCoreRow,
  darwinCoreCsv,
  darwinCoreRows,
} from "./tables/darwin-core.ts";
export type { SharedPlace } from "./tables/shared-place.ts";
export { planText } from "./plan/plan-text.ts";
export { planPage } from "./plan/plan-page.ts";
export { startForText } from "./pages/start-for-text.ts";
export { seasonText } from "./pages/season-text.ts";
