import { type DegreeDayOptions, degreeDaysEach } from "../../src/index.ts";
import { city } from "../support/city.ts";

/** A grid whose days are to be counted, for the arithmetic only. */
export const GRID = { cells: 481_000, years: 30, daysAYear: 365.25 } as const;

/** Days of the whole grid. */
export const GRID_DAYS = GRID.cells * GRID.years * GRID.daysAYear;

/** What every part of the report computes, so that their speeds are of one job. */
export const JOB: DegreeDayOptions & { readonly amount: number } = {
  method: "single-sine",
  lower: 11.5,
  upper: 33,
  cutoff: "horizontal",
  amount: 352,
};

/** Cells held in memory at a time: about a million days. */
const CELLS_A_CHUNK = 700;

/** Years of the bundled record, of 366, 365, 365 and 365 days. */
const YEARS = [366, 365, 365, 365];
export const DAYS_A_CELL = 1461;

/** What came of streaming days through the library. */
export interface Streamed {
  readonly days: number;
  readonly seasons: number;
  /** Seasons in which the amount was reached, which is also what keeps the work from being left out. */
  readonly reached: number;
  readonly seconds: number;
  /** Resident memory after a tenth of the days, and at the end, bytes. */
  readonly early: number;
  readonly late: number;
}

/**
 * Streams made-up cells through the library a chunk at a time: each is the New York record moved by up to
 * 5 °C. Timed are the copy into the columns, the degree-days, and each season's running total up to the first
 * day that reaches the amount; not timed is a disk or a network, which a real job has too.
 * @param days How many at least; whole chunks are run.
 */
export function streamDays(days: number): Streamed {
  const record = city("new-york");
  const [min, max, out] = [0, 0, 0].map(() => new Float64Array(CELLS_A_CHUNK * DAYS_A_CELL));
  if (min === undefined || max === undefined || out === undefined) throw new Error("three columns were made");
  const chunks = Math.ceil(days / out.length);
  let [reached, early] = [0, 0];
  const begun = performance.now();
  for (let chunk = 0; chunk < chunks; chunk++) {
    for (let cell = 0; cell < CELLS_A_CHUNK; cell++) {
      const shift = shiftOf(chunk * CELLS_A_CHUNK + cell);
      fill(min, record.min, cell * DAYS_A_CELL, shift);
      fill(max, record.max, cell * DAYS_A_CELL, shift);
    }
    degreeDaysEach(min, max, JOB, out);
    reached += seasonsReached(out);
    if (chunk === Math.floor(chunks / 10)) early = process.memoryUsage.rss();
  }
  return {
    days: chunks * out.length,
    seasons: chunks * CELLS_A_CHUNK * YEARS.length,
    reached,
    seconds: (performance.now() - begun) / 1000,
    early,
    late: process.memoryUsage.rss(),
  };
}

/** How far a cell is moved, in °C: -5.0 to 4.9 in tenths. */
function shiftOf(cell: number): number {
  return ((cell % 100) - 50) / 10;
}

function fill(column: Float64Array, from: Float64Array, at: number, shift: number): void {
  for (let i = 0; i < from.length; i++) column[at + i] = (from[i] ?? Number.NaN) + shift;
}

function seasonsReached(heat: Float64Array): number {
  let [at, reached] = [0, 0];
  while (at < heat.length) {
    for (const days of YEARS) {
      let total = 0;
      for (let i = at; i < at + days && total < JOB.amount; i++) total += heat[i] ?? Number.NaN;
      if (total >= JOB.amount) reached++;
      at += days;
    }
  }
  return reached;
}
