/** What a note is about. Stable across releases. */
export type NoteCode =
  // from reading files
  | "sentinel-values"
  | "flagged-values"
  | "empty-cells"
  | "duplicate-rows"
  | "rows-sorted"
  | "extremes-exchanged"
  | "missing-days"
  | "gaps-in-readings"
  | "clock-change"
  | "unit-converted"
  | "unit-assumed"
  | "faulty-readings"
  | "lines-skipped"
  | "location-chosen"
  | "text-encoding"
  | "count-assumed"
  | "columns-recognised"
  | "columns-ignored"
  | "date-order-deduced"
  | "offset-from-header"
  // from temperatures and the forecast
  | "days-filled"
  | "temperatures-assumed"
  | "temperatures-forecast"
  | "temperatures-normal"
  | "temperatures-estimated"
  | "frost"
  | "sun-on-the-cage"
  | "station-outside-overlap"
  | "temperatures-past-years"
  | "weather-ensemble"
  | "learned-from-log"
  | "outside-tested-temperatures"
  | "constant-from-memory"
  | "common-practice"
  | "derived-constant"
  | "unknown-age"
  | "time-of-day-assumed"
  | "local-clock"
  | "no-sunrise"
  | "series-ends-first"
  | "never-develops"
  | "last-day-without-next-minimum"
  | "log-kept-aside"
  | "log-superseded"
  | "log-examples"
  | "written-unknown"
  | "exact-places"
  // from day plans
  | "survival-not-counted"
  | "plan-stops"
  | "molts-not-dated"
  // from estimates
  | "few-trials"
  | "outside-linear-range"
  | "weak-line"
  | "did-not-converge"
  | "parameter-at-limit"
  | "no-information-criterion"
  // from plans for a wanted day
  | "chance-of-the-living"
  | "room-held-exactly"
  | "weather-taken-as-known"
  | "hours-of-their-own"
  // from seasons
  | "few-years"
  | "years-left-out"
  | "season-side-assumed"
  | "first-eggs-by-temperature"
  | "broods-at-the-middle-pace"
  | "frost-and-plants"
  | "shortening-days"
  | "pre-laying-unknown"
  | "warm-all-year";

/** Something a reader of a result must know: carried in the result and shown on every screen. */
export interface Note {
  readonly code: NoteCode;
  /** One or two plain sentences. */
  readonly message: string;
}
