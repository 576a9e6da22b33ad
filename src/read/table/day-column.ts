import type { InputError, InputErrorCode, Wording } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { daysInMonth, dayNumber } from "../../time/civil-day.ts";
import { type Places, refusal } from "../place.ts";

/** The order of the parts of a date. */
export type DateOrder = "year-first" | "month-first" | "day-first";

// A date as written. `open` has its month and date in an order that the cell alone does not tell.
type WrittenDay =
  | { readonly kind: "day"; readonly year: number; readonly month: number; readonly date: number }
  | { readonly kind: "open"; readonly year: number; readonly first: number; readonly second: number }
  | { readonly kind: "short-year" }
  | { readonly kind: "none" };

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const EIGHT_DIGITS = /^(\d{4})(\d{2})(\d{2})$/;
const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{2}|\d{4})$/;
const MONTH_NAMED = /^(\d{1,2})[-. ]{1,2}([a-z]{3,9})[-., ]{1,2}(\d{2}|\d{4})$/i;
const MONTH_NAMED_FIRST = /^([a-z]{3,9})[. ]{1,2}(\d{1,2}),? (\d{2}|\d{4})$/i;

const MONTHS = "january february march april may june july august september october november december".split(
  " ",
);

/**
 * The days of a column. Dates are written year first, year last, or with an English month name. With the
 * year last, month and date may stand in either order: `order` decides, or else a row whose number above
 * 12 can only be a date decides for the column. Where nothing decides, the column is refused, not guessed.
 * @param texts The cells; `entries` holds the row of each.
 * @returns Day numbers as {@link dayNumber} counts them; the order, where something decided it; and a note when it
 *   was deduced.
 * @throws {InputError} `invalid-day`, `ambiguous-date`.
 */
export function dayColumn(
  texts: readonly string[],
  entries: readonly number[],
  column: string,
  order: DateOrder | undefined,
  places: Places,
): { days: Float64Array; order: DateOrder | undefined; notes: Note[] } {
  const refuse = (code: InputErrorCode, i: number, mustBe: string | Wording): InputError =>
    refusal(code, places, entries[i] ?? 0, column, texts[i], mustBe);

  // A logger repeats each date many times: every spelling is taken apart once.
  const written = new Map<string, WrittenDay>();
  let monthFirst: number | null = null;
  let dayFirst: number | null = null;
  let open: number | null = null;
  for (const [i, text] of texts.entries()) {
    if (written.has(text)) continue;
    const day = writtenDay(text);
    written.set(text, day);
    if (day.kind === "none") {
      throw refuse(
        "invalid-day",
        i,
        (name) =>
          `it must be a date, such as 2026-07-04${name("dateOrder", (it) => ` or, with ${it}, 4/7/2026`)}.`,
      );
    }
    if (day.kind === "short-year") {
      throw refuse(
        "invalid-day",
        i,
        "a year of two digits does not name the century; write all four digits.",
      );
    }
    if (day.kind !== "open") continue;
    if (day.first > 12) dayFirst ??= i;
    else if (day.second > 12) monthFirst ??= i;
    else if (day.first !== day.second) open ??= i;
  }

  const deduced = order ?? deducedOrder({ monthFirst, dayFirst, open }, entries, places, refuse);
  const numbers = new Map<string, number>();
  const days = new Float64Array(texts.length);
  texts.forEach((text, i) => {
    let number = numbers.get(text);
    if (number === undefined) {
      const day = written.get(text) ?? { kind: "none" };
      if (day.kind === "open" && deduced === "year-first") {
        throw refuse(
          "invalid-day",
          i,
          (name) => `${name("dateOrder")} says year-first, but the year stands last.`,
        );
      }
      number = numberOf(day, deduced, (why) => refuse("invalid-day", i, `that day does not exist: ${why}.`));
      numbers.set(text, number);
    }
    days[i] = number;
  });

  const proof = deduced === "day-first" ? dayFirst : monthFirst;
  if (order !== undefined || proof === null) return { days, order, notes: [] };
  const message =
    `The dates in column ${column} are ${deduced === "day-first" ? "day first" : "month first"}: ` +
    `${places.one} ${entries[proof]} (${texts[proof]}) cannot be read otherwise.`;
  return { days, order: deduced, notes: [{ code: "date-order-deduced", message }] };
}

function deducedOrder(
  proof: { monthFirst: number | null; dayFirst: number | null; open: number | null },
  entries: readonly number[],
  places: Places,
  refuse: (code: InputErrorCode, i: number, mustBe: string | Wording) => InputError,
): DateOrder {
  const { monthFirst, dayFirst, open } = proof;
  if (monthFirst !== null && dayFirst !== null) {
    throw refuse(
      "ambiguous-date",
      Math.max(monthFirst, dayFirst),
      `it can only be ${monthFirst > dayFirst ? "month first" : "day first"}, but ${places.one} ${entries[Math.min(monthFirst, dayFirst)]} can only be the other way round; write all dates in one order.`,
    );
  }
  if (monthFirst === null && dayFirst === null && open !== null) {
    throw refuse(
      "ambiguous-date",
      open,
      (name) =>
        `no date in the column tells whether the month or the day comes first; say ${name("dateOrder")} month-first or day-first.`,
    );
  }
  return dayFirst === null ? "month-first" : "day-first";
}

function writtenDay(text: string): WrittenDay {
  const first = YEAR_FIRST.exec(text);
  if (first) return { kind: "day", year: Number(first[1]), month: Number(first[3]), date: Number(first[4]) };
  const eight = EIGHT_DIGITS.exec(text);
  if (eight) return { kind: "day", year: Number(eight[1]), month: Number(eight[2]), date: Number(eight[3]) };
  const last = YEAR_LAST.exec(text);
  if (last) {
    if (last[4]?.length === 2) return { kind: "short-year" };
    return { kind: "open", year: Number(last[4]), first: Number(last[1]), second: Number(last[3]) };
  }
  const named = MONTH_NAMED.exec(text);
  if (named) return namedDay(named[3], named[2], named[1]);
  const namedFirst = MONTH_NAMED_FIRST.exec(text);
  if (namedFirst) return namedDay(namedFirst[3], namedFirst[1], namedFirst[2]);
  return { kind: "none" };
}

function namedDay(year = "", name = "", date = ""): WrittenDay {
  const word = name.toLowerCase();
  const month = MONTHS.findIndex(
    (full) => full === word || full.slice(0, 3) === word || (word === "sept" && full === "september"),
  );
  if (month < 0) return { kind: "none" };
  return year.length === 2
    ? { kind: "short-year" }
    : { kind: "day", year: Number(year), month: month + 1, date: Number(date) };
}

function numberOf(day: WrittenDay, order: DateOrder, refuse: (why: string) => InputError): number {
  if (day.kind === "none" || day.kind === "short-year") throw refuse("it is not a date");
  const { year, month, date } =
    day.kind === "day"
      ? day
      : {
          year: day.year,
          month: order === "day-first" ? day.second : day.first,
          date: order === "day-first" ? day.first : day.second,
        };
  const last = daysInMonth(year, month);
  if (year < 1) throw refuse("years run from 0001");
  if (last === 0)
    throw refuse(`there is no month ${month}${day.kind === "open" ? ` when it is read ${order}` : ""}`);
  if (date < 1 || date > last) throw refuse(`that month has ${last} days`);
  const two = (part: number): string => String(part).padStart(2, "0");
  return dayNumber(`${String(year).padStart(4, "0")}-${two(month)}-${two(date)}`);
}
