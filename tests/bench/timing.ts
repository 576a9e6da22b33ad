/** Median times of two or more tasks, ms, each round running all of them one after the other. */
export function medians(tasks: readonly (() => unknown)[], rounds: number): number[] {
  return timesOf(tasks, rounds).map(median);
}

/**
 * Medians over the rounds of each task's time divided by the first one's in the same round: what else runs
 * on the machine slows both.
 */
export function ratios(tasks: readonly (() => unknown)[], rounds: number): number[] {
  const [first = [], ...others] = timesOf(tasks, rounds);
  return others.map((times) => median(times.map((time, round) => time / (first[round] ?? Number.NaN))));
}

function timesOf(tasks: readonly (() => unknown)[], rounds: number): number[][] {
  const times = tasks.map((): number[] => []);
  for (let round = 0; round < rounds + 3; round++) {
    tasks.forEach((task, i) => {
      const begun = performance.now();
      task();
      // The first rounds are for the compiler.
      if (round >= 3) times[i]?.push(performance.now() - begun);
    });
  }
  return times;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}
