import { InputError, type InputErrorCode, type InputPath, type Wording, shown } from "../errors.ts";

export { counted } from "../plain-words.ts";

/** How the entries of one kind of file are named in errors and notes. */
export interface Places {
  /** One entry, such as `row`. */
  readonly one: string;
  /** Several entries, such as `rows`. */
  readonly many: string;
  /** A value of an entry, as text for people and as a path for programs. */
  cell(entry: number, field: string): { text: string; path: InputPath };
}

/** Rows as a spreadsheet numbers them: the first line of the file is row 1. */
export const ROWS: Places = {
  one: "row",
  many: "rows",
  cell: (row, column) => ({ text: `row ${row}, column ${shown(column)}`, path: ["row", row, column] }),
};

/** Entries of a JSON list, counted from 0 as JSON paths are. */
export function listPlaces(list: string): Places {
  const prefix: InputPath = list === "" ? [] : [list];
  return {
    one: "entry",
    many: "entries",
    cell(index, field) {
      const path = [...prefix, index, field];
      return { text: `${list === "" ? "entry " : ""}${path.join(".")}`, path };
    },
  };
}

/** The refusal of one value: its place, itself, and what would be right. */
export function refusal(
  code: InputErrorCode,
  places: Places,
  entry: number,
  field: string,
  value: unknown,
  mustBe: string | Wording,
): InputError {
  const { text, path } = places.cell(entry, field);
  const wording: Wording = (name) =>
    `${text} is ${shown(value)}; ${typeof mustBe === "string" ? mustBe : mustBe(name)}`;
  return new InputError(code, wording, { path, value });
}

/**
 * A value that the core reads, which names its place by the path that it is handed, in the words for an entry.
 * @param read Takes a path; what it throws begins with that path.
 * @throws {InputError} What `read` throws.
 */
export function readAt<Value>(
  { text, path }: { readonly text: string; readonly path: InputPath },
  read: (path: InputPath) => Value,
): Value {
  try {
    return read(path);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { code, message, value } = error;
    throw new InputError(code, `${text}${message.slice(error.path.join(".").length)}`, { path, value });
  }
}

// A note must stay readable when half the file is affected.
const MOST_RANGES = 8;

/** Increasing whole numbers as runs: `5 to 7, 12`; a long list ends in how many numbers were left out. */
export function runs(numbers: readonly number[], show: (number: number) => string = String): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const found: { first: number; last: number }[] = [];
  for (const number of sorted) {
    const open = found.at(-1);
    if (open && number === open.last + 1) open.last = number;
    else found.push({ first: number, last: number });
  }
  const listed = found
    .slice(0, MOST_RANGES)
    .map(({ first, last }) => (first === last ? show(first) : `${show(first)} to ${show(last)}`));
  const left = found.slice(MOST_RANGES).reduce((sum, { first, last }) => sum + last - first + 1, 0);
  return left > 0 ? `${listed.join(", ")} and ${left} more` : listed.join(", ");
}

/** `row 5`, `rows 5 to 7, 12` or `entries 3, 4`. */
export function entriesText(places: Places, entries: readonly number[]): string {
  return `${new Set(entries).size === 1 ? places.one : places.many} ${runs(entries)}`;
}
