import { InputError, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { sameName } from "./csv-table.ts";
import { type ColumnRole, type HeaderMeaning, headerMeaning } from "./header-words.ts";
import type { ReadOptions } from "../options.ts";
import { saysPlainly } from "./plain-headers.ts";

/** A column that was chosen: where it stands and what its header says. */
export interface Column {
  readonly index: number;
  readonly header: HeaderMeaning;
}

/** Columns of a table of daily extremes. */
export interface DailyColumns {
  readonly kind: "daily";
  readonly date: Column;
  readonly min: Column;
  readonly max: Column;
}

/** Columns of a table of readings: a column of stamps alone, or a day and a time of day. */
export interface ReadingsColumns {
  readonly kind: "readings";
  readonly stamp: Column;
  /** Column of the time of day where `stamp` holds only the day. */
  readonly time: Column | null;
  readonly temperature: Column;
}

type Many = "first" | "refuse";
type Named = NonNullable<ReadOptions["columns"]>;

/**
 * Columns for a day, a minimum and a maximum, or `null` where a header lacks one.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function dailyColumns(header: readonly string[], many: Many, named: Named = {}): DailyColumns | null {
  const choose = temperatureColumns(header, named, many);
  const min = choose("min", "min");
  const max = choose("max", "max");
  const date = choose("date", "date") ?? choose("date", "stamp") ?? choose("time", "time");
  return date && min && max ? { kind: "daily", date, min, max } : null;
}

/**
 * Columns for a time and a temperature, or `null` where a header lacks one.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function readingsColumns(
  header: readonly string[],
  many: Many,
  named: Named = {},
): ReadingsColumns | null {
  const choose = temperatureColumns(header, named, many);
  const temperature = choose("temperature", "temperature");
  if (!temperature) return null;
  if (named.date !== undefined || named.time !== undefined) {
    const date = named.date === undefined ? null : choose("date", "date");
    const time = named.time === undefined ? null : choose("time", "time");
    const stamp = date ?? time;
    return stamp && { kind: "readings", stamp, time: date && time, temperature };
  }
  const whole = choose("time", "stamp");
  const date = choose("date", "date");
  const time = choose("time", "time");
  if (many === "refuse" && whole && (date || time))
    throw ambiguous("time", [whole, ...(date ? [date] : []), ...(time ? [time] : [])]);
  const stamp = whole ?? date ?? time;
  return stamp && { kind: "readings", stamp, time: date && time, temperature };
}

/**
 * Notes on which columns were taken and which were left.
 * @param places Whether rows were chosen by columns of places, or these are remarks that nothing was made of.
 */
export function columnNotes(
  header: readonly string[],
  used: Readonly<Record<string, Column | null>>,
  places: "chosen" | "remark" = "chosen",
): Note[] {
  const taken = Object.entries(used).flatMap(([as, column]) => (column ? [{ as, column }] : []));
  // Places are looked at, even where all rows are of one.
  const left = header.filter(
    (name, i) =>
      name !== "" &&
      (places === "remark" || headerMeaning(name).role !== "location") &&
      !taken.some(({ column }) => column.index === i),
  );
  const notes: Note[] = [];
  const deduced = taken.filter(({ as, column }) => !saysPlainly(column.header, as));
  if (deduced.length > 0) {
    const list = deduced.map(({ as, column }) => `${as} from ${shown(column.header.text)}`).join(", ");
    notes.push({ code: "columns-recognised", message: `Columns: ${list}.` });
  }
  if (left.length > 0) {
    notes.push({
      code: "columns-ignored",
      message: `Not used: ${left.map((name) => shown(name)).join(", ")}.`,
    });
  }
  return notes;
}

/**
 * Chooses one column after another, by the name the caller gave or else by what its header means. A
 * column that the caller named for one thing is not offered for another.
 * @param roleOf What a column is for by its header, or `null`.
 */
export function chooser<Role extends string>(
  columns: readonly Column[],
  named: Readonly<Partial<Record<string, string | undefined>>>,
  many: Many,
  roleOf: (column: Column) => Role | null,
): (option: string, role: Role) => Column | null {
  const names = Object.values(named).filter((name) => name !== undefined);
  const free = columns.filter(({ header: { text } }) => !names.some((name) => sameName(text, name)));
  return (option, role) => {
    const name = named[option];
    const candidates =
      name === undefined
        ? free.filter((column) => roleOf(column) === role)
        : columns.filter((column) => sameName(column.header.text, name));
    if (many === "refuse" && candidates.length > 1) throw ambiguous(option, candidates);
    return candidates[0] ?? null;
  };
}

function temperatureColumns(
  header: readonly string[],
  named: Named,
  many: Many,
): (option: keyof Named, role: ColumnRole) => Column | null {
  const columns = header.map((text, index): Column => ({ index, header: headerMeaning(text) }));
  return chooser<ColumnRole>(columns, named, many, (column) => column.header.role);
}

function ambiguous(option: string, candidates: readonly Column[]): InputError {
  const names = candidates.map(({ header }) => shown(header.text));
  return new InputError(
    "ambiguous-column",
    (name) =>
      `the columns ${names.join(" and ")} could each be the column ${option}; ${name(`columns.${option}`, (it) => `say which with ${it}, or `)}rename or remove one.`,
    { path: ["columns", option], value: candidates.map(({ header }) => header.text) },
  );
}
