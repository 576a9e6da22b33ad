/** Median times of two or more tasks, ms, each round running all of them one after the other. */
export function medians(tasks: readonly (() => unknown)[], rounds: number): number[] {
  const times = tasks.map((): number[] => []);
  for (let round = 0; round < rounds + 3; round++) {
    tasks.forEach((task, i) => {
      const begun = performance.now();
      task();
      // The first rounds are for the compiler.
      if (round >= 3) times[i]?.push(performance.now() - begun);
    });
  }
  return times.map((list) => list.sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN);
}
