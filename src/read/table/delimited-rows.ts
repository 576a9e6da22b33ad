import { dsvFormat } from "d3-dsv";
import { InputError } from "../../errors.ts";

/**
 * The rows of a delimited text, each a list of cells. A line end inside a quoted cell ends no row, a quotation
 * mark inside an unquoted cell (`5" pot`) is text, and blanks between a closing mark and the next separator
 * or line end are dropped.
 * @param text Lines that end in a line feed.
 * @param delimiter One character.
 * @throws {InputError} `malformed-file`: a quoted cell that is not closed, or that text follows.
 */
export function delimitedRows(text: string, delimiter: string): string[][] {
  const { sound, unsound } = quoting(text, delimiter);
  const rows = dsvFormat(delimiter).parseRows(sound);
  if (unsound === "") return rows;
  // Where the cell that stopped it begins a row, the rows before end in a line feed that d3-dsv drops.
  const row = sound === "" || sound.endsWith("\n") ? rows.length + 1 : rows.length;
  throw new InputError(
    "malformed-file",
    `row ${row} has a quotation mark that is not closed or not doubled; a quoted cell must begin and end with one.`,
    { path: ["row", row] },
  );
}

// Enough text for any header; all of a large file would be cut up for nothing.
const PREVIEW_LENGTH = 200_000;

/**
 * The first rows of a text, to look for a header with one delimiter after the other. Refuses nothing: from the
 * first quoted cell on that is not sound, quotation marks are passed over.
 */
export function firstRows(text: string, delimiter: string, most: number): string[][] {
  const start = text.slice(0, PREVIEW_LENGTH);
  // Only quoted cells can have more lines than rows. A line more than wanted, because a last line end begins no row.
  const lines = start.includes('"') ? start : start.split("\n", most + 1).join("\n");
  const { sound, unsound } = quoting(lines, delimiter);
  return dsvFormat(delimiter)
    .parseRows(sound + unsound.replaceAll('"', ""))
    .slice(0, most);
}

/**
 * A text cut before its first quoted cell that does not end as it should; `unsound` is empty where there is
 * none. d3-dsv tells of no such cell: it lets an open one run to the end of the text, and loses the character after a
 * closing mark, for which reason blanks that stand there are taken out.
 */
function quoting(text: string, delimiter: string): { readonly sound: string; readonly unsound: string } {
  const pieces: string[] = [];
  let taken = 0;
  let open = text.indexOf('"');
  while (open >= 0) {
    const before = text[open - 1];
    let end = open + 1;
    if (open === 0 || before === "\n" || before === delimiter) {
      const close = closing(text, open);
      if (close >= 0) end = endOfBlanks(text, close + 1, delimiter);
      if (close < 0 || (end < text.length && text[end] !== "\n" && text[end] !== delimiter)) {
        return { sound: pieces.join("") + text.slice(taken, open), unsound: text.slice(open) };
      }
      if (end > close + 1) {
        pieces.push(text.slice(taken, close + 1));
        taken = end;
      }
    }
    open = text.indexOf('"', end);
  }
  return { sound: pieces.join("") + text.slice(taken), unsound: "" };
}

// The mark that closes a quoted cell, -1 where none does; two marks together are one of the text.
function closing(text: string, open: number): number {
  let close = text.indexOf('"', open + 1);
  while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  return close;
}

function endOfBlanks(text: string, from: number, delimiter: string): number {
  let end = from;
  while (end < text.length && text[end] !== "\n" && text[end] !== delimiter && text[end]?.trim() === "")
    end++;
  return end;
}
