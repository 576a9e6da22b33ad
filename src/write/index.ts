export { calendarText } from "./calendar-text.ts";
export { comparisonText } from "./comparison-text.ts";
export { cautionsText, notesText } from "./remarks-text.ts";
export { degreeDayText } from "./degree-day-text.ts";
export { speciesListText, speciesText } from "./species-text.ts";
export { methodComparisonText } from "./method-comparison-text.ts";
