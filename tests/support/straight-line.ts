/** Least-squares line through pairs of x and y, written apart from src so that it can check it. */
export function straightLine(pairs: readonly (readonly [x: number, y: number])[]): {
  readonly intercept: number;
  readonly slope: number;
} {
  const meanX = pairs.reduce((sum, [x]) => sum + x, 0) / pairs.length;
  const meanY = pairs.reduce((sum, [, y]) => sum + y, 0) / pairs.length;
  const along = pairs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  const spread = pairs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  return { intercept: meanY - (along / spread) * meanX, slope: along / spread };
}
