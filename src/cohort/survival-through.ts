import { givenList } from "../given.ts";
import type { StageSurvival } from "./expected-adults.ts";
import type { LifeTableRow } from "./life-table.ts";

/**
 * Survival through all stages of a life table together, as counts for `expectedAdults`: as many animals as would
 * give the share that lives to the end the standard error that it has. Without losses these are the animals at the
 * start and those that came through.
 *
 * For animals at the begin of the first stage this is better than a list of the stages: there each stage brings
 * a belief of its own, of an animal that might have died, and over many stages these add up to deaths that nobody
 * saw.
 * @param rows What `lifeTable` returned, or the rows of `lifeTableFromLog`.
 * @returns `null` where the share to the end is not known.
 * @example
 * survivalThrough(lifeTable([{ stage: "egg", entered: 20, died: 2 }, { stage: "larva", entered: 18, died: 9 }])) // → { survived: 9, of: 20 }
 */
export function survivalThrough(
  rows: readonly LifeTableRow[],
): Extract<StageSurvival, { readonly of: number }> | null {
  givenList(rows, ["rows"]);
  // Where all have died, no later stage can tell anything else.
  const end = rows.findIndex(({ cumulative }) => cumulative === 0);
  const index = end < 0 ? rows.length - 1 : end;
  const row = rows[index];
  if (row === undefined || row.cumulative === null) return null;
  const { cumulative: share, cumulativeError: error } = row;
  const before = rows[index - 1]?.cumulative ?? 1;
  const of =
    share > 0 && share < 1 && error !== null ? (share * (1 - share)) / error ** 2 : row.atRisk / before;
  // Rounding must not turn whole animals into almost whole ones.
  const animals = Math.abs(of - Math.round(of)) < 1e-9 * of ? Math.round(of) : of;
  return { survived: Number((share * animals).toPrecision(12)), of: animals };
}
