import type { Note } from "../notes.ts";
import type { TemperatureFormat } from "./options.ts";

/** What a file of temperatures was read into. */
export interface ReadResult<Series> {
  readonly series: Series;
  /** What was deduced, dropped, moved or converted on the way; empty when nothing was. */
  readonly notes: readonly Note[];
  readonly format: TemperatureFormat;
}
