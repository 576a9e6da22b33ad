// Words for 'there is no reading' that stations and spreadsheets write.
const MISSING = new Set(["", "na", "nan", "null", "m"]);

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d{1,3})?$/i;

/**
 * The number in a cell of a table. A point or a comma is the decimal sign, never a thousands sign: no
 * temperature needs one. A typographic minus sign counts as a minus.
 * @returns The number, `null` for a cell that says there is none (empty, NA, NaN, null, M), or `undefined`
 *   for any other text, including infinity.
 * @example
 * numberCell("−3,5") // → -3.5
 */
export function numberCell(text: string): number | null | undefined {
  const trimmed = text.trim();
  if (MISSING.has(trimmed.toLowerCase())) return null;
  const plain = trimmed.replace("\u2212", "-");
  if (!NUMBER.test(plain)) return undefined;
  const value = Number(plain.replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}
