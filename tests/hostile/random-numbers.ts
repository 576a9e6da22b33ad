/** Numbers from 0 to below 1 that look random and are the same for the same seed (the mulberry32 generator). */
export type Random = () => number;

export function randomNumbers(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One of a list. */
export function oneOf<Value>(list: readonly Value[], random: Random): Value {
  const value = list[Math.floor(random() * list.length)];
  if (value === undefined) throw new Error("the list is empty");
  return value;
}
