import type { LogEntry } from "../../cohort/log.ts";
import { given } from "../../given.ts";
import type { Note } from "../../notes.ts";
import type { StageId } from "../../species/life-cycle.ts";

/** One point of what was learned, with its share of belief. */
export interface LearnedNode {
  /** What the cohort needs, as a multiple of the constants: above 1 it is slower than they say. */
  readonly pace: number;
  /** How much warmer the animals are than the temperatures given, °C. */
  readonly offset: number;
  readonly weight: number;
}

/** Points of each offset, in the order in which the offsets come. @internal */
export function byOffset<T extends { readonly offset: number }>(points: readonly T[]): T[][] {
  const groups = new Map<number, T[]>();
  for (const point of points) {
    const group = groups.get(point.offset);
    if (group === undefined) groups.set(point.offset, [point]);
    else group.push(point);
  }
  return [...groups.values()];
}

/** A number with what is believed of it: 10, 50 and 90 % points. */
export interface Belief {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** What a log taught about a cohort. Plain data; a later forecast can be given it. */
export interface Learned {
  readonly pace: Belief;
  /** `null` where the temperatures were taken as those of the animals. */
  readonly offset: Belief | null;
  readonly nodes: readonly LearnedNode[];
  /** The last stage that was seen to begin and when it may have: the forecast goes on from there. */
  readonly from: {
    readonly stage: StageId;
    readonly moments: readonly { /** ISO 8601. */ readonly at: string; readonly weight: number }[];
  } | null;
  /** Entries that were used, in the order of life. */
  readonly used: readonly LogEntry[];
  /** Entries that were not, each with a plain reason. */
  readonly aside: readonly { readonly entry: LogEntry; readonly reason: string }[];
  readonly notes: readonly Note[];
}

/**
 * When the last stage that a log saw began, for the middle animal of those seen. A day plan asks for it as `since`.
 * @returns ISO 8601, with an offset where the forecast has a zone, or `null` where the forecast goes on from the find.
 * @example
 * const found = { stage: "egg", on: "2026-06-08", count: 12 };
 * const input = { lifeCycle: danausPlexippus, found, temperatures: constantTemperature(25) };
 * lastStageBegan(learn(input, [logEntry({ stage: "instar-2", on: "2026-06-15T18:00", count: 12 })]));
 * // → "2026-06-15T06:00:00"
 */
export function lastStageBegan(learned: Learned): string | null {
  given(learned, ["learned"], "what learn returns");
  const moments = [...(learned.from?.moments ?? [])].sort((a, b) => (a.at < b.at ? -1 : 1));
  let weight = 0;
  const middle = moments.find((one) => (weight += one.weight) >= 0.5 - 1e-9) ?? moments.at(-1);
  return middle?.at ?? null;
}

/**
 * Points of a weighted distribution below which 10, 50 and 90 % of the weight lie. Half of a point's weight
 * counts as below it, and between points the share runs straight, so that the grid does not show.
 */
export function beliefOf(points: readonly { readonly value: number; readonly weight: number }[]): Belief {
  const merged = new Map<number, number>();
  for (const { value, weight } of points) merged.set(value, (merged.get(value) ?? 0) + weight);
  const sorted = [...merged].sort(([a], [b]) => a - b);
  const total = sorted.reduce((sum, [, weight]) => sum + weight, 0);
  const at = (share: number): number => {
    let below = 0;
    let before: { value: number; share: number } | null = null;
    for (const [value, weight] of sorted) {
      const here = (below + weight / 2) / total;
      if (here >= share) {
        if (before === null) return value;
        return before.value + ((value - before.value) * (share - before.share)) / (here - before.share);
      }
      below += weight;
      before = { value, share: here };
    }
    return before?.value ?? Number.NaN;
  };
  return { low: at(0.1), middle: at(0.5), high: at(0.9) };
}
