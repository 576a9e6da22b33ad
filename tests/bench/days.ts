/** Columns of daily extremes, °C: a year's course with weather on it, the same in every run. */
export function daysOf(count: number): { readonly min: Float64Array; readonly max: Float64Array } {
  const min = Float64Array.from({ length: count }, (_, i) => 12 + 8 * Math.sin(i) - 4 * Math.cos(i * 0.7));
  const max = min.map((low, i) => low + 6 + 5 * Math.sin(i * 1.3) ** 2);
  return { min, max };
}
