/** What a paired measurement gives. */
export interface Paired {
  /** Median times of each task, ms. */
  readonly medians: readonly number[];
  /** Medians over the rounds of a task's time divided by the first task's in the same round. */
  readonly ratios: readonly number[];
}

/**
 * Tasks timed in rounds, each round running all of them one after the other, so that what else runs on the
 * machine slows all alike.
 * @param warmUpMs How long rounds go by uncounted first, for the compiler.
 */
export function paired(tasks: readonly (() => unknown)[], rounds: number, warmUpMs = 400): Paired {
  const times = tasks.map((): number[] => []);
  const begun = performance.now();
  for (let left = rounds, round = 0; left > 0; round++) {
    const counted = round >= 3 && performance.now() - begun > warmUpMs;
    tasks.forEach((task, i) => {
      const start = performance.now();
      task();
      if (counted) times[i]?.push(performance.now() - start);
    });
    if (counted) left--;
  }
  const first = times[0] ?? [];
  return {
    medians: times.map(median),
    ratios: times.map((list) => median(list.map((time, i) => time / (first[i] ?? Number.NaN)))),
  };
}

/** Median times of two or more tasks, ms, in rounds as {@link paired} runs them. */
export function medians(tasks: readonly (() => unknown)[], rounds: number): readonly number[] {
  return paired(tasks, rounds, 0).medians;
}

/** The middle one of some numbers. */
export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}
