/** A cell: a number is written as it is, `null` as an empty cell, a text guarded where it needs to be. */
export type CsvCell = string | number | null;

// The characters that spreadsheets begin a formula with, and those that hide one: OWASP, "CSV Injection"
// (from memory). Apostrophes before them count too, so that the guard can be taken off again without loss.
const FORMULA = /^'*[=+\-@＝＋－＠\t\r\n]/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;

// Control characters that no reader of tables takes; tabs and line ends may stand in a quoted cell.
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;

/**
 * A text that no spreadsheet takes for a formula: one that begins with = + - @ (or their wide forms), a tab or a
 * line end gets an apostrophe before it, which `readLog` takes off again. Texts that are numbers, such as `-5`, stay.
 * @example
 * guarded("=1+1") // → "'=1+1"
 * guarded("-5") // → "-5"
 */
export function guarded(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/**
 * Cells as one line of a table, without the line end: RFC 4180, section 2, rules 4 to 7. Blanks at the ends of texts
 * are taken off, control characters are taken out.
 * @param delimiter Between the cells. Default a comma.
 */
export function csvLine(cells: readonly CsvCell[], delimiter = ","): string {
  return cells.map((cell) => quoted(textOf(cell), delimiter)).join(delimiter);
}

/** A table with a header, lines ending in CR LF: RFC 4180, section 2, rules 1 to 3. */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header, ...rows].map((cells) => `${csvLine(cells)}\r\n`).join("");
}

/** A number to a thousandth, so that a table shows no more digits than mean something. */
export function toThousandths(value: number | null): number | null {
  return value === null ? null : Number(value.toFixed(3));
}

function textOf(cell: CsvCell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  return guarded(cell.replace(CONTROL, "").replace(/\r\n?/g, "\n").trim());
}

function quoted(text: string, delimiter: string): string {
  return text.includes(delimiter) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
