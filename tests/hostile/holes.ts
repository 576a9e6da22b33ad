type Path = readonly (string | number)[];

/** Places of a result that hold NaN or undefined; texts that show one count too. */
export function holesIn(value: unknown, path: Path = [], seen = new Set<unknown>()): string[] {
  const here = path.join(".") || "the result";
  if (typeof value === "number") return Number.isNaN(value) ? [`${here} is NaN`] : [];
  if (value === undefined) return [`${here} is undefined`];
  if (typeof value === "string")
    return /\bNaN\b|\bundefined\b|\[object |\bInfinity\b/.test(value)
      ? [`${here} says ${value.slice(0, 200)}`]
      : [];
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  if (value instanceof Float64Array) return Array.from(value).some(Number.isNaN) ? [`${here} has NaN`] : [];
  return Object.entries(value).flatMap(([key, one]) => holesIn(one, [...path, key], seen));
}
