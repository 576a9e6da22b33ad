/**
 * Inverse of a small symmetric matrix by elimination with pivots, or `null` when it is singular to working precision.
 * @param matrix Rows; scaled so that its diagonal is about 1, or the precision is judged wrongly.
 */
export function symmetricInverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...matrix.map((_, j) => (i === j ? 1 : 0))]);
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.NaN;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(at(i, k)) > Math.abs(at(pivot, k))) pivot = i;
    const value = at(pivot, k);
    if (!(Math.abs(value) > 1e-13)) return null;
    const [upper, lower] = [rows[k] ?? [], rows[pivot] ?? []];
    rows[pivot] = upper;
    const scaled = lower.map((entry) => entry / value);
    rows[k] = scaled;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = at(i, k);
      rows[i] = (rows[i] ?? []).map((entry, j) => entry - factor * (scaled[j] ?? Number.NaN));
    }
  }
  return rows.map((row) => row.slice(n));
}
