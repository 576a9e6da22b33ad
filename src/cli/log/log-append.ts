import { InputError } from "../../errors.ts";
import { csvTable } from "../../read/table/csv-table.ts";
import { type LogColumns, logColumns } from "../../read/log/log-columns.ts";
import { csvLine } from "../../write/layout/csv-table.ts";
import { encodedText } from "../files/text-encoding.ts";

/** Cells to write, by what they are for; those left out stay empty. */
export type NewCells = Readonly<Partial<Record<keyof LogColumns, string>>>;

/** Headers of columns that a log may lack, for the day on which a row needs them. */
const NEW_HEADERS: Readonly<Partial<Record<keyof LogColumns, string>>> = {
  time: "time",
  cohort: "cohort",
  fate: "fate",
  notYet: "not yet",
  note: "note",
  corrects: "corrects",
  written: "written",
};

/**
 * A log with one row more at its end, in the dialect it has: encoding, byte-order mark, delimiter, line ends, order
 * of columns. All rows stay as they are, to the byte; the header grows where the new row needs a column that is not
 * there, and a last line without an end gets one.
 * @returns The new bytes, and the row of the file that the new one has.
 * @throws {InputError} What reading the table throws; `unknown-column` for a count where the log has none.
 */
export function withRow(bytes: Uint8Array, cells: NewCells): { bytes: Uint8Array; row: number } {
  const { text, encode } = encodedText(bytes);
  const { columns, header, headerRow, delimiter } = csvTable(text, logColumns, {
    needed: "a stage and the day it was seen on",
    example: "stage,seen on,count",
  });
  const { added, texts } = placed(columns, header.length, cells);
  const ends = recordEnds(text, delimiter);
  const newline = newlineOf(text);
  const headerEnd = ends[headerRow - 1] ?? text.length;
  const grown = added.map((name) => delimiter + name).join("");
  const body = text.slice(headerEnd);
  const closed = (body === "" ? text : body).endsWith("\n") || body.endsWith("\r") ? "" : newline;
  const whole = `${text.slice(0, headerEnd)}${grown}${body}${closed}${csvLine(texts, delimiter)}${newline}`;
  return { bytes: encode(whole), row: ends.length + 1 };
}

function placed(columns: LogColumns, width: number, cells: NewCells): { added: string[]; texts: string[] } {
  const added: string[] = [];
  const texts: string[] = Array.from({ length: width }, () => "");
  for (const field of FIELDS) {
    const text = cells[field] ?? "";
    const column = columns[field];
    const header = NEW_HEADERS[field];
    if (column !== null) texts[column.index] = text;
    else if (header !== undefined && text !== "") {
      added.push(header);
      texts.push(text);
    } else if (field === "count" && text !== "" && text !== "1") {
      throw new InputError(
        "unknown-column",
        "the log has no column of counts, so each row is one animal; write a row for each, or add a column count with a number in every row.",
        { path: ["count"], value: text },
      );
    }
  }
  return { added, texts };
}

const FIELDS = [
  "stage",
  "on",
  "time",
  "count",
  "cohort",
  "fate",
  "notYet",
  "note",
  "corrects",
  "written",
] as const;

function newlineOf(text: string): string {
  const windows = text.match(/\r\n/g)?.length ?? 0;
  const plain = (text.match(/\n/g)?.length ?? 0) - windows;
  const old = (text.match(/\r/g)?.length ?? 0) - windows;
  if (windows > 0 && windows >= plain && windows >= old) return "\r\n";
  return old > plain ? "\r" : "\n";
}

/** Where each row ends, its line end left out. A line end within quotes ends no row: RFC 4180, section 2, rule 6. */
function recordEnds(text: string, delimiter: string): number[] {
  const ends: number[] = [];
  let quoted = false;
  let cellBegins = true;
  let since = 0;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i];
    if (quoted) {
      if (letter !== '"') continue;
      // Two quotation marks stand for one.
      if (text[i + 1] === '"') i++;
      else quoted = false;
    } else if (letter === '"' && cellBegins) {
      quoted = true;
      cellBegins = false;
    } else if (letter === "\n" || letter === "\r") {
      ends.push(i);
      if (letter === "\r" && text[i + 1] === "\n") i++;
      since = i + 1;
      cellBegins = true;
    } else {
      cellBegins = letter === delimiter;
    }
  }
  if (since < text.length) ends.push(text.length);
  return ends;
}
