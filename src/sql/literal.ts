/**
 * A finite number as a decimal literal that stands for exactly the same double: the shortest digits that
 * lead back to it. Without an exponent, which would make it another type in some engines, and with
 * parentheses around a negative one, because two hyphens in a row begin a comment.
 * @example
 * decimalLiteral(11.5) // → "11.5"
 * @example
 * decimalLiteral(-2.5e-7) // → "(-0.00000025)"
 * @internal
 */
export function decimalLiteral(value: number): string {
  const digits = withoutExponent(Math.abs(value));
  return value < 0 ? `(-${digits})` : digits;
}

function withoutExponent(value: number): string {
  const [digits = "", exponent] = String(value).split("e");
  if (exponent === undefined) return digits;
  const [whole = "", fraction = ""] = digits.split(".");
  const point = whole.length + Number(exponent);
  return point <= 0 ? `0.${"0".repeat(-point)}${whole}${fraction}` : `${whole}${fraction}`.padEnd(point, "0");
}
