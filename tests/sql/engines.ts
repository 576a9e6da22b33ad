import { tmpdir } from "node:os";
import { mkdtempSync } from "node:fs";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { PGlite } from "@electric-sql/pglite";

/** A row of text, numbers and NULL; days are cast to text by the tests. */
export type Row = Readonly<Record<string, unknown>>;

/** A SQL engine that runs in this process. */
export interface Engine {
  readonly name: string;
  run(sql: string): Promise<void>;
  rows(sql: string): Promise<Row[]>;
}

/** DuckDB, which can also write and read Parquet. */
export async function duckdb(): Promise<Engine> {
  const connection = await (await DuckDBInstance.create(":memory:")).connect();
  return {
    name: "DuckDB",
    run: async (sql) => {
      await connection.run(sql);
    },
    rows: async (sql) => {
      const reader = await connection.runAndReadAll(sql);
      return reader.getRowObjectsJson().map((row) => ({ ...row }));
    },
  };
}

/** PostgreSQL, compiled to WebAssembly. */
export async function postgres(): Promise<Engine> {
  const db = await PGlite.create();
  return {
    name: "PostgreSQL",
    run: async (sql) => {
      await db.exec(sql);
    },
    rows: async (sql) => {
      const { rows } = await db.query<Row>(sql);
      return rows;
    },
  };
}

/** Both engines, each of which must give the same numbers from the same text. */
export async function engines(): Promise<readonly [Engine, Engine]> {
  return [await duckdb(), await postgres()];
}

/** A folder that nothing else writes to. */
export function ownFolder(): string {
  return mkdtempSync(join(tmpdir(), "moltline-sql-"));
}

/** A number as SQL text; `null` is NULL, and NaN and the infinities are cast from their names. */
export function cell(value: number | null): string {
  return `CAST(${value === null ? "NULL" : `'${value}'`} AS DOUBLE PRECISION)`;
}

/** A number of a row; bigints and counts come as text from some engines. */
export function numberOf(row: Row | undefined, column: string): number | null {
  const value = row?.[column];
  if (value === undefined) throw new Error(`no column ${column}`);
  return value === null ? null : Number(value);
}
