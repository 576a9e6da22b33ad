import { type Column, chooser } from "../table/columns.ts";
import { headerMeaning } from "../table/header-words.ts";
import type { TrialOptions } from "../options.ts";

/** Columns of a table of rearing trials. */
export interface TrialColumns {
  readonly temperature: Column;
  readonly days: Column;
  readonly animals: Column | null;
}

type TrialField = keyof TrialColumns;

const TRIAL_HEADERS = new Map<string, TrialField>([
  ["days", "days"],
  ["mean days", "days"],
  ["days mean", "days"],
  ["duration", "days"],
  ["duration days", "days"],
  ["development time", "days"],
  ["development time days", "days"],
  ["development days", "days"],
  ["animals", "animals"],
  ["n", "animals"],
  ["number", "animals"],
  ["count", "animals"],
  ["how many", "animals"],
  ["weight", "animals"],
]);

/**
 * Columns of a table of trials, or `null` where the header lacks the temperature or the days.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function trialColumns(
  header: readonly string[],
  many: "first" | "refuse",
  named: NonNullable<TrialOptions["columns"]> = {},
): TrialColumns | null {
  const columns = header.map((text, index): Column => ({ index, header: headerMeaning(text) }));
  const choose = chooser<TrialField>(columns, named, many, ({ header: { text, role } }) => {
    if (role === "temperature") return "temperature";
    const words = text
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== "");
    return TRIAL_HEADERS.get(words.join(" ")) ?? null;
  });
  const temperature = choose("temperature", "temperature");
  const days = choose("days", "days");
  return temperature && days ? { temperature, days, animals: choose("animals", "animals") } : null;
}
