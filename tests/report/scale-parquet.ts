import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { degreeDaysSql, reachedSql } from "../../src/sql/index.ts";
import { DAYS_A_CELL, JOB } from "./scale-days.ts";

/** What came of one query over the Parquet file. */
export interface Queried {
  /** Wall clock. */
  readonly seconds: number;
  /** Time that processors worked for it, all threads together; steadier on a busy machine. */
  readonly busy: number;
  /** Degree-days in all, or seasons that reached the amount. */
  readonly answer: number;
}

/** What came of writing the file and reading it by both queries. */
export interface ParquetRun {
  readonly days: number;
  readonly bytes: number;
  readonly engine: string;
  readonly queries: readonly { readonly threads: number; readonly sum: Queried; readonly reached: Queried }[];
}

const SOURCE = { table: "days", station: "cell", season: "year", day: "on", min: "tmin", max: "tmax" };

/**
 * Made-up cells as in `scale-days.ts`, with noise of up to 1 °C on both readings, so that cells are no copies
 * of each other and the file is as large as a real one; temperatures as whole tenths in 16 bits.
 */
function madeUp(cells: number): string {
  return `SELECT cell, r.on, EXTRACT(YEAR FROM r.on) AS year,
      CAST(r.lo + (cell % 100) - 50 + noise AS SMALLINT) AS tmin10,
      CAST(r.hi + (cell % 100) - 50 + noise + hash(cell, r.on, 1) % 11 AS SMALLINT) AS tmax10
    FROM (SELECT CAST(c AS INTEGER) AS cell FROM range(${cells}) AS t(c)) AS cells
    CROSS JOIN (SELECT date AS on, CAST(round(temp_min * 10) AS INTEGER) AS lo, CAST(round(temp_max * 10) AS INTEGER) AS hi
      FROM read_csv('fixtures/temperatures/new-york-2012-2015.csv')) AS r
    CROSS JOIN LATERAL (SELECT CAST(hash(cell, r.on) % 21 AS INTEGER) - 10 AS noise) AS n`;
}

/** Writes a Parquet file of about so many days and counts them by the emitted SQL, on each number of threads. */
export async function runParquet(days: number, threadCounts: readonly number[]): Promise<ParquetRun> {
  const folder = mkdtempSync(join(tmpdir(), "moltline-scale-"));
  const file = join(folder, "days.parquet");
  try {
    const connection = await (await DuckDBInstance.create(":memory:")).connect();
    const one = async (sql: string): Promise<unknown> =>
      (await connection.runAndReadAll(sql)).getRowsJson()[0]?.[0];
    const timed = async (sql: string): Promise<Queried> => {
      const [begun, cpu] = [performance.now(), process.cpuUsage()];
      const answer = Number(await one(sql));
      const { user, system } = process.cpuUsage(cpu);
      return { seconds: (performance.now() - begun) / 1000, busy: (user + system) / 1e6, answer };
    };
    const cells = Math.ceil(days / DAYS_A_CELL);
    await connection.run(`SET memory_limit = '4GB'; SET temp_directory = '${folder}'`);
    await connection.run(`COPY (${madeUp(cells)}) TO '${file}' (FORMAT parquet, COMPRESSION zstd)`);
    await connection.run(
      `CREATE VIEW days AS SELECT cell, year, "on", tmin10 / 10.0 AS tmin, tmax10 / 10.0 AS tmax FROM read_parquet('${file}')`,
    );
    const queries = [];
    for (const threads of threadCounts) {
      await connection.run(`SET threads = ${threads}`);
      const sum = await timed(`SELECT SUM(${degreeDaysSql({ min: "tmin", max: "tmax" }, JOB)}) FROM days`);
      const reached = await timed(`SELECT COUNT(reached_on) FROM (${reachedSql(SOURCE, JOB)}) AS seasons`);
      queries.push({ threads, sum, reached });
    }
    return {
      days: cells * DAYS_A_CELL,
      bytes: statSync(file).size,
      engine: String(await one("SELECT version()")),
      queries,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
