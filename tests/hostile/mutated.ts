/** Steps from a list of arguments to a value inside them. */
export type Path = readonly (string | number)[];

/** Every place in some arguments that a caller wrote, parents before children. */
export function placesIn(value: unknown, isWhole: (value: unknown) => boolean, path: Path = []): Path[] {
  const own = path.length === 0 ? [] : [path];
  if (path.length > 0 && isWhole(value)) return own;
  if (Array.isArray(value))
    return [...own, ...value.flatMap((one, i) => placesIn(one, isWhole, [...path, i]))];
  if (isRecord(value))
    return [...own, ...Object.entries(value).flatMap(([key, one]) => placesIn(one, isWhole, [...path, key]))];
  return own;
}

/** The value at a place. */
export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (at, key) => (isRecord(at) || Array.isArray(at) ? Reflect.get(at, key) : undefined),
    value,
  );
}

/** A copy with another value at a place; what is not on the way is shared. */
export function withValue(value: unknown, [key, ...rest]: Path, put: unknown): unknown {
  if (key === undefined) return put;
  const copy: object = Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) };
  Reflect.set(copy, key, withValue(Reflect.get(copy, key), rest, put));
  return copy;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return (
    typeof value === "object" &&
    value !== null &&
    [Object.prototype, null].includes(Object.getPrototypeOf(value))
  );
}
