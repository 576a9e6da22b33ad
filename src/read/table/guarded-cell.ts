// The mirror of the guard that `moltline/write` puts before such texts.
const GUARDED = /^'+[=+\-@＝＋－＠\t\r\n]/;

/**
 * The text of a cell without the apostrophe that keeps spreadsheets from taking it for a formula: one apostrophe at
 * the begin, before others or before = + - @. All other texts are as they stand.
 * @example
 * unguarded("'=1+1") // → "=1+1"
 * unguarded("'tis well") // → "'tis well"
 */
export function unguarded(cell: string): string {
  return GUARDED.test(cell) ? cell.slice(1) : cell;
}
