/** A chance in whole percent; near 0 and 1 it never claims certainty. */
export function percentText(chance: number): string {
  if (chance > 0 && chance < 0.005) return "<1 %";
  if (chance < 1 && chance >= 0.995) return ">99 %";
  return `${Math.round(chance * 100)} %`;
}
