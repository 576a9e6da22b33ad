import { InputError, nearestNames, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { delimitedRows, firstRows } from "./delimited-rows.ts";
import { ROWS, entriesText } from "../place.ts";

/** A table of text cells with the header found. */
export interface CsvTable<Columns> {
  /** The columns that are needed. */
  readonly columns: Columns;
  /** Header cells as they stand in the file, trimmed. */
  readonly header: readonly string[];
  /** The rows below the header that are not blank. */
  readonly rows: readonly (readonly string[])[];
  /** Row of the file for each of `rows`, as a spreadsheet counts: the first line is row 1. */
  readonly rowNumbers: readonly number[];
  /** Row of the file that the header is in. */
  readonly headerRow: number;
  readonly delimiter: string;
  readonly notes: readonly Note[];
}

/** Rows among which a header is looked for; title lines before it are skipped. */
export const HEADER_SEARCH_ROWS = 20;

const DELIMITERS = [",", ";", "\t", "|"] as const;

/**
 * The needed columns of a header, or `null` where it lacks one. Where two columns could be the same
 * thing, `"first"` takes the first, `"refuse"` throws.
 */
export type ColumnsOf<Columns> = (header: readonly string[], many: "first" | "refuse") => Columns | null;

/** What a table is to hold. */
export interface TableNeeds {
  /** The needed columns in words, for the refusal. */
  readonly needed: string;
  /** A header that has them, for the refusal. */
  readonly example: string;
  /** Headers that the caller gave, by the option that names them. */
  readonly named?: Readonly<Partial<Record<string, string | undefined>>> | undefined;
}

/**
 * A delimited text as a table. The delimiter and the header row are the ones with which a row names the
 * columns that are needed, so that title lines and separators inside titles do no harm.
 * @throws {InputError} `unknown-column` (no header in the first 20 rows), `ambiguous-column`,
 *   `malformed-file` (quotes, row length).
 */
export function csvTable<Columns>(
  text: string,
  columnsOf: ColumnsOf<Columns>,
  needs: TableNeeds,
): CsvTable<Columns> {
  const lines = text.replace(/\r\n?/g, "\n");
  const found = findHeader(lines, (cells) => columnsOf(cells, "first") !== null);
  const columns = found && columnsOf(found.header, "refuse");
  if (!found || !columns) throw noHeader(lines, needs);
  const { header, row: headerIndex, delimiter } = found;

  const rows: (readonly string[])[] = [];
  const rowNumbers: number[] = [];
  const records = delimitedRows(lines, delimiter);
  for (let i = headerIndex + 1; i < records.length; i++) {
    const cells = records[i] ?? [];
    if (isBlank(cells)) continue;
    for (let extra = header.length; extra < cells.length; extra++) {
      if (cells[extra]?.trim() !== "") throw tooLong(i + 1, cells, header, delimiter);
    }
    rows.push(cells);
    rowNumbers.push(i + 1);
  }
  const titles = records.slice(0, headerIndex).flatMap((cells, i) => (isBlank(cells) ? [] : [i + 1]));
  const notes: Note[] = [];
  if (titles.length > 0) {
    const message = `Skipped ${entriesText(ROWS, titles)} before the header in row ${headerIndex + 1}.`;
    notes.push({ code: "lines-skipped", message });
  }
  return { columns, header, rows, rowNumbers, headerRow: headerIndex + 1, delimiter, notes };
}

/**
 * Refuses a name that no header has. A column that can be left out would else be taken for one that was.
 * @param named Headers that the caller gave, by the option that names them.
 * @throws {InputError} `unknown-column`.
 */
export function refuseUnmetNames(
  { header, headerRow }: CsvTable<unknown>,
  named: NonNullable<TableNeeds["named"]> = {},
): void {
  const unmet = unmetName(header, named);
  if (unmet !== undefined) throw noSuchHeader(unmet, header.filter(Boolean), headerRow);
}

interface FoundHeader {
  readonly header: readonly string[];
  readonly row: number;
  readonly delimiter: string;
}

// Where several delimiters give a header, the one with which the rows below are as long as it is right;
// a comma inside a title or a decimal comma would cut them differently.
function findHeader(lines: string, isHeader: (cells: readonly string[]) => boolean): FoundHeader | null {
  let best: { found: FoundHeader; fitting: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const records = preview(lines, delimiter);
    const row = records.slice(0, HEADER_SEARCH_ROWS).findIndex((cells) => isHeader(cells));
    if (row < 0) continue;
    const header = (records[row] ?? []).map((cell) => cell.trim());
    const fitting = records.slice(row + 1).filter(({ length }) => length === header.length).length;
    const found = { header, row, delimiter };
    const wider = best === null || header.length > best.found.header.length;
    if (best === null || fitting > best.fitting || (fitting === best.fitting && wider))
      best = { found, fitting };
  }
  return best?.found ?? null;
}

// Some rows more than a header can be in, to see how long the rows below it are.
function preview(lines: string, delimiter: string): string[][] {
  return firstRows(lines, delimiter, HEADER_SEARCH_ROWS + 10);
}

function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "");
}

function tooLong(
  row: number,
  cells: readonly string[],
  header: readonly string[],
  delimiter: string,
): InputError {
  const remedy =
    delimiter === ","
      ? "if the numbers have decimal commas, separate the columns with semicolons or quote the numbers"
      : "every row must have the columns of the header";
  return new InputError(
    "malformed-file",
    `row ${row} has ${cells.length} cells, the header ${header.length}; ${remedy}.`,
    {
      path: ["row", row],
      value: cells.length,
    },
  );
}

// The row with the most cells in it is the likeliest header, and the one to show.
function noHeader(lines: string, { needed, example, named = {} }: TableNeeds): InputError {
  let widest: { cells: string[]; row: number } = { cells: [], row: 0 };
  for (const delimiter of DELIMITERS) {
    preview(lines, delimiter).forEach((record, i) => {
      const cells = record.map((cell) => cell.trim()).filter((cell) => cell !== "");
      if (cells.length > widest.cells.length) widest = { cells, row: i + 1 };
    });
  }
  const unmet = unmetName(widest.cells, named);
  if (unmet !== undefined) return noSuchHeader(unmet, widest.cells, widest.row);
  return new InputError(
    "unknown-column",
    (name) =>
      `no row among the first ${HEADER_SEARCH_ROWS} names the columns needed (${needed}); row ${widest.row} has ${widest.cells.slice(0, 12).map(shown).join(", ")}. Add a header row such as ${example}${name("columns", (it) => `, or say with ${it} which is which`)}.`,
    { path: ["row", widest.row], value: widest.cells[0] ?? "" },
  );
}

function noSuchHeader(
  [option, missing]: readonly [option: string, name: string],
  cells: readonly string[],
  row: number,
): InputError {
  const near = nearestNames(missing, cells);
  const offer = near.length > 0 ? near : cells.slice(0, 12);
  return new InputError(
    "unknown-column",
    (name) =>
      `no header in the first ${HEADER_SEARCH_ROWS} rows has the column ${shown(missing)} that ${name(`columns.${option}`)} names; row ${row} has ${offer.map(shown).join(", ")}.`,
    { path: ["columns", option], value: missing },
  );
}

function unmetName(
  header: readonly string[],
  named: NonNullable<TableNeeds["named"]>,
): readonly [option: string, name: string] | undefined {
  return Object.entries(named).flatMap(([option, name]) =>
    name === undefined || header.some((cell) => sameName(cell, name)) ? [] : [[option, name] as const],
  )[0];
}

/** Whether a header is the one a caller named: blanks around it and case do not matter. */
export function sameName(header: string, name: string): boolean {
  return header.trim().toLowerCase() === name.trim().toLowerCase();
}
