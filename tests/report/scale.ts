import { GRID, GRID_DAYS, JOB, type Streamed } from "./scale-days.ts";
import type { ParquetRun } from "./scale-parquet.ts";

/** The library on some threads: what each streamed, and the process as a whole. */
export interface LibraryRun {
  readonly threads: readonly Streamed[];
  /** Wall clock from the first thread's start to the last one's end. */
  readonly seconds: number;
  readonly busy: number;
  /** Peak resident memory of the process, bytes. */
  readonly peak: number;
}

/** The machine and the moment of a run. */
export interface Circumstances {
  readonly machine: string;
  readonly node: string;
  readonly day: string;
  /** Programs that wanted a processor, mean of a minute, before and after. */
  readonly load: readonly [number, number];
}

/** One line of the table. */
interface Line {
  readonly what: string;
  readonly threads: number;
  readonly days: number;
  readonly seconds: number;
  readonly busy: number;
}

/** All figures as Markdown: measured first, then what follows from them by arithmetic. */
export function scaleMarkdown(
  at: Circumstances,
  library: readonly LibraryRun[],
  parquet: ParquetRun & { readonly peak: number },
): string {
  const lines: Line[] = [
    ...library.map(({ threads, seconds, busy }) => ({
      what: "library, `degreeDaysEach` and running totals",
      threads: threads.length,
      days: threads.reduce((sum, { days }) => sum + days, 0),
      seconds,
      busy,
    })),
    ...(["sum", "reached"] as const).flatMap((query) =>
      parquet.queries.map((run) => ({
        what: query === "sum" ? "DuckDB, `degreeDaysSql` summed" : "DuckDB, `reachedSql`",
        threads: run.threads,
        days: parquet.days,
        ...run[query],
      })),
    ),
  ];
  return [
    `${at.machine}, Node ${at.node}, DuckDB ${parquet.engine}, ${at.day}; load average ${at.load.map((one) => one.toFixed(1)).join(" before, ")} after.`,
    `Job: ${JOB.method}, ${JOB.lower} to ${JOB.upper} °C, ${JOB.cutoff} cutoff; first day of each season that reaches ${JOB.amount} degree-days.`,
    "",
    "### Measured",
    "",
    table(
      ["what", "threads", "days", "s", "days/s", "processor s", "days/processor s"],
      lines.map((line) => [
        line.what,
        String(line.threads),
        power(line.days),
        line.seconds.toFixed(1),
        power(line.days / line.seconds),
        line.busy.toFixed(1),
        power(line.days / line.busy),
      ]),
    ),
    "",
    ...library.map(({ threads, peak }) => memoryLine(threads, peak)),
    `- DuckDB with a memory limit of 4 GB: peak ${megabytes(parquet.peak)}.`,
    `- Parquet, 16-bit tenths of a degree, zstd: ${(parquet.bytes / parquet.days).toFixed(2)} bytes a day.`,
    "",
    "### Extrapolated",
    "",
    `Not measured: ${GRID.cells} cells × ${GRID.years} years × ${GRID.daysAYear} days = ${power(GRID_DAYS)} days, divided by the days/s and the days/processor s above.`,
    "",
    table(
      ["what", "threads", "grid, by wall clock", "grid, processor hours"],
      lines.map((line) => [
        line.what,
        String(line.threads),
        duration((GRID_DAYS / line.days) * line.seconds),
        ((GRID_DAYS / line.days) * (line.busy / 3600)).toFixed(2),
      ]),
    ),
    "",
    "| two temperatures a day, stored as | bytes a day | the grid |",
    "| --- | --- | --- |",
    ...storageLines(parquet),
  ].join("\n");
}

function memoryLine(threads: readonly Streamed[], peak: number): string {
  const grown = threads.map(({ early, late }) => megabytes(late - early)).join(" and ");
  return `- Library, ${threads.length} ${threads.length === 1 ? "thread" : "threads"}: peak ${megabytes(peak)}; grown by ${grown} after the first tenth of the days.`;
}

function storageLines({ bytes, days }: ParquetRun): string[] {
  return (
    [
      ["64-bit floats", 16],
      ["32-bit floats", 8],
      ["16-bit tenths", 4],
      ["Parquet as measured, with cell, day and year", bytes / days],
    ] as const
  ).map(([what, each]) => `| ${what} | ${each.toFixed(2)} | ${((each * GRID_DAYS) / 1e9).toFixed(1)} GB |`);
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => "---"), ...rows].map((row) => `| ${row.join(" | ")} |`).join("\n");
}

function power(value: number): string {
  return value.toExponential(2).replace("e+", "e");
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(0)} MB`;
}

function duration(seconds: number): string {
  return seconds < 5400 ? `${(seconds / 60).toFixed(1)} min` : `${(seconds / 3600).toFixed(1)} h`;
}
