import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { type GapPolicy, fillGaps } from "../../temperature/gaps.ts";
import { type Normals, normalTemperatures, normalsOf } from "../../temperature/normals.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type CivilDay, addDays, civilDay } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import type { Given } from "./arguments.ts";
import { fileName, inFile, readTemperatureFile } from "../files/input-file.ts";
import type { Terminal } from "../terminal.ts";

/** Normals from a file of past years, or `null` when none is named. */
export async function givenNormals(
  path: string | undefined,
  given: Given,
  terminal: Terminal,
): Promise<{ normals: Normals; notes: readonly Note[] } | null> {
  if (path === undefined) return null;
  const { series, notes } = await readTemperatureFile(path, given, terminal);
  return inFile(path, () => {
    if (series.kind === "daily") return Promise.resolve({ normals: normalsOf(series), notes });
    throw new InputError(
      "unknown-format",
      `normals need daily minima and maxima of past years, not ${series.kind === "constant" ? "a constant" : "readings"}.`,
      { path: ["normals"], value: path },
    );
  });
}

/** How missing days are to be filled, or `null` when they are not. */
export function gapPolicy(given: Given, normals: Normals | null): GapPolicy | null {
  const upToDays = given.number("fill-gaps");
  if (upToDays !== undefined) return { fill: "interpolate", upToDays };
  return normals === null ? null : { fill: "normals", normals };
}

/** A series with its gaps filled as asked, and what there is to say of it. */
export function filledSeries(
  series: TemperatureSeries,
  policy: GapPolicy | null,
  path: string,
): { series: TemperatureSeries; notes: Note[]; assumptions: Note[] } {
  if (policy === null) return { series, notes: [], assumptions: [] };
  if (series.kind === "daily") {
    const filled = fillGaps(series, policy);
    const days = filled.origin.filter((origin) => origin === "filled").length;
    const message = `${fileName(path)}: ${days === 1 ? "1 missing day was" : `${days} missing days were`} filled ${policy.fill === "normals" ? "with the means of past years" : "along straight lines"}.`;
    return { series: filled, notes: [], assumptions: days === 0 ? [] : [{ code: "days-filled", message }] };
  }
  if (policy.fill === "normals") return { series, notes: [], assumptions: [] };
  const message = `${fileName(path)}: --fill-gaps is for days and leaves readings as they are; --longest-gap joins readings further apart.`;
  return { series, notes: [{ code: "gaps-in-readings", message }], assumptions: [] };
}

/** Normals for a year and a half behind each series that ends. */
export function normalsAfter(series: readonly TemperatureSeries[], normals: Normals): TemperatureSeries[] {
  const starts = series.flatMap((one): CivilDay[] => {
    if (one.kind === "daily") return [one.start];
    return one.kind === "readings" ? [civilDay(Math.floor((one.at[0] ?? 0) / DAY_MS) - 1)] : [];
  });
  const ends = series.flatMap((one): CivilDay[] => {
    if (one.kind === "daily") return [addDays(one.start, one.min.length)];
    return one.kind === "readings" ? [civilDay(Math.floor((one.at.at(-1) ?? 0) / DAY_MS) + 1)] : [];
  });
  const [first] = starts.sort();
  const last = ends.sort().at(-1);
  return first === undefined || last === undefined
    ? []
    : [normalTemperatures(normals, first, addDays(last, 550))];
}
