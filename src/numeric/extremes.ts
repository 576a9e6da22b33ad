// Math.max(...list) puts the whole list on the stack, which holds some hundred thousand numbers and no more.

/** The greatest of some numbers; -Infinity where there are none, NaN where one is. */
export function greatest(values: Iterable<number>): number {
  let most = -Infinity;
  for (const value of values) most = Math.max(most, value);
  return most;
}

/** The least of some numbers; Infinity where there are none, NaN where one is. */
export function least(values: Iterable<number>): number {
  let fewest = Infinity;
  for (const value of values) fewest = Math.min(fewest, value);
  return fewest;
}
