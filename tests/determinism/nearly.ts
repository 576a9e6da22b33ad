const NUMBER = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g;

/** Where two texts differ in more than numbers that are the same but for a share of their size; five at most. */
export function differences(one: string, other: string, tolerance: number): string[] {
  const [words, otherWords] = [one.split(NUMBER), other.split(NUMBER)];
  const [numbers, otherNumbers] = [one.match(NUMBER) ?? [], other.match(NUMBER) ?? []];
  if (words.length !== otherWords.length) return [`${words.length} parts and ${otherWords.length}`];
  const found = words.flatMap((word, i) => (word === otherWords[i] ? [] : [`${word} and ${otherWords[i]}`]));
  numbers.forEach((number, i) => {
    const [a, b] = [Number(number), Number(otherNumbers[i])];
    // What is below a billionth is rounding of a difference of greater numbers.
    if (!(Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a)))) found.push(`${a} and ${b}`);
  });
  return found.slice(0, 5);
}
