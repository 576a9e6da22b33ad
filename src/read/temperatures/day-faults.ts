import { InputError } from "../../errors.ts";
import { civilDay } from "../../time/civil-day.ts";
import type { Places } from "../place.ts";

/** A day far from all others: a mistyped year would otherwise become millions of missing days. */
export function tooFarApart(
  days: ArrayLike<number>,
  entries: readonly number[],
  places: Places,
  fields: { date: string },
): InputError {
  const order = Array.from(days, (day, i) => ({ day, entry: entries[i] ?? 0 })).sort((a, b) => a.day - b.day);
  const middle = order[order.length >> 1]?.day ?? 0;
  const [earliest, latest] = [order[0], order.at(-1)];
  const odd = middle - (earliest?.day ?? middle) > (latest?.day ?? middle) - middle ? earliest : latest;
  const { text, path } = places.cell(odd?.entry ?? 0, fields.date);
  const day = civilDay(odd?.day ?? 0);
  return new InputError(
    "invalid-day",
    `${text} is ${day}, more than 400 years from another day of the file; correct the year.`,
    { path, value: day },
  );
}

/** A day whose minimum is above its maximum. */
export function swapped(
  entry: number,
  low: number,
  high: number,
  places: Places,
  fields: { min: string; max: string },
): InputError {
  const { text, path } = places.cell(entry, fields.min);
  return new InputError(
    "min-above-max",
    (name) =>
      `${text} gives a minimum of ${shownDegrees(low)} °C, above the maximum of ${shownDegrees(high)} °C; correct it${name("exchangeSwapped", (it) => `, or say ${it} if the two were mixed up`)}.`,
    { path, value: low },
  );
}

/** The same, where the two stand in two entries. */
export function crossed(
  day: string,
  before: number,
  entry: number,
  low: number,
  high: number,
  places: Places,
  fields: { min: string },
): InputError {
  return new InputError(
    "min-above-max",
    `${places.many} ${before} and ${entry} give ${day} a minimum of ${shownDegrees(low)} °C, above the maximum of ${shownDegrees(high)} °C; correct one of them.`,
    { path: places.cell(entry, fields.min).path, value: low },
  );
}

/** A day with one temperature in one entry and another in the next. */
export function twice(
  day: string,
  before: number,
  entry: number,
  places: Places,
  fields: { min: string },
): InputError {
  return new InputError(
    "conflicting-readings",
    `${places.many} ${before} and ${entry} both give ${day}, with different temperatures; keep the right one.`,
    { path: places.cell(entry, fields.min).path, value: day },
  );
}

function shownDegrees(celsius: number): string {
  return String(Number(celsius.toFixed(2)));
}
