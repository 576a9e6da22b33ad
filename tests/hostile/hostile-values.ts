import fc from "fast-check";

/** Numbers that formulas stumble over. */
export const NUMBERS: readonly number[] = [
  NaN,
  Infinity,
  -Infinity,
  1e308,
  -1e308,
  Number.MAX_VALUE,
  5e-324,
  -5e-324,
  -0,
  0,
  1,
  -1,
  0.5,
  1.5,
  2 ** 31,
  2 ** 32,
  2 ** 53,
  -(2 ** 53),
  1e15,
  1e16,
  8.64e15,
  -8.64e15,
  1e9,
  1e12,
];

/** Texts that parsers, tables, calendars and pages stumble over. */
export const TEXTS: readonly string[] = [
  "",
  " ",
  "\0",
  "\uFEFF",
  "\uD800",
  "a\uDFFFb",
  "\u202E",
  "x".repeat(100_000),
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "valueOf",
  "=1+1",
  "+1",
  "-1",
  "@x",
  "\t=1",
  "\r\nBEGIN:VEVENT",
  "a;b,c\\n",
  "<script>x</script>",
  "&amp;",
  '"',
  "'",
  "`",
  "${x}",
  "../../x",
  "NaN",
  "undefined",
  "null",
  "0",
  "1e999",
  "٣",
  "İ",
  "ß",
  "\u0301",
  "a\nb",
  "👩‍👩‍👧‍👦",
  "(a+)+$",
  "%s%n",
];

/** Days and times at the edges of the calendar and outside it. */
export const DATES: readonly string[] = [
  "0001-01-01",
  "9999-12-31",
  "0000-12-31",
  "2024-02-29",
  "2023-02-29",
  "1900-02-29",
  "2000-02-29",
  "-0001-01-01",
  "+010000-01-01",
  "2026-13-01",
  "2026-00-10",
  "2026-06-31",
  "2026-6-1",
  "20260601",
  "2026-06-08T24:00",
  "2026-06-08T12:00Z",
  "2026-06-08T12:00+14:00",
  "2026-06-08T12:00+99:99",
  "9999-12-31T23:59:59Z",
  "0001-01-01T00:00+14:00",
  "2011-12-30",
  "2026-03-08T02:30",
  "2026-11-01T01:30",
  "2026-06-08T12:00:60",
  "2026-W23-1",
  "2026-160",
  "02-29",
  "13-01",
  "00-00",
  "1969-12-31",
  "2026-06-08 12:00",
  "2026-06-08T12:00:00.123456789",
];

export const ZONES: readonly string[] = [
  "Europe/Berlin",
  "America/New_York",
  "Australia/Lord_Howe",
  "America/Santiago",
  "Pacific/Apia",
  "Africa/Casablanca",
  "Pacific/Kiritimati",
  "Etc/GMT+12",
  "UTC",
  "Mars/Olympus",
  "+05:30",
  "__proto__",
  "",
  "europe/berlin",
  "Asia/Kathmandu",
];

/** Values of a kind that nothing asks for. */
export const STRANGE: readonly unknown[] = [
  null,
  undefined,
  true,
  false,
  0,
  "text",
  "",
  Symbol("s"),
  10n,
  [],
  {},
  [[]],
  [null],
  [undefined],
  { __proto__: null },
  () => 1,
  () => NaN,
  new Date(0),
  new Date(NaN),
  new Map(),
  new Uint8Array(3),
  Object.create(null) as unknown,
  /x/,
  { kind: "daily" },
  { kind: "readings" },
  { kind: "constant" },
  { kind: "joined" },
  { kind: "ensemble" },
  { length: 2 },
  { length: -1 },
  { length: 1e9 },
  new Proxy({}, {}),
  JSON.parse('{"__proto__":{"polluted":true}}') as unknown,
];

/** The same kind of value as one that is right, but a hostile one. */
export function sameKind(value: unknown): fc.Arbitrary<unknown> {
  if (typeof value === "number") return fc.oneof(fc.constantFrom(...NUMBERS), fc.double());
  if (typeof value === "string") {
    const texts = /^\d{4}-\d{2}/.test(value)
      ? [...DATES, ...DATES, ...TEXTS]
      : value.includes("/")
        ? [...ZONES, ...TEXTS]
        : [...TEXTS, ...DATES];
    return fc.oneof(fc.constantFrom(...texts), fc.string({ unit: "binary", maxLength: 30 }));
  }
  if (typeof value === "boolean") return fc.constant(!value);
  if (value instanceof Float64Array) {
    return fc.oneof(
      fc.constantFrom(
        new Float64Array(0),
        Float64Array.of(NaN),
        Float64Array.of(Infinity, 1),
        new Float64Array(value.length).fill(NaN),
      ),
      fc.array(fc.constantFrom(...NUMBERS), { maxLength: 4 }).map((list) => Float64Array.from(list)),
    );
  }
  if (value instanceof Uint8Array) return fc.uint8Array({ maxLength: 40 });
  if (Array.isArray(value)) {
    const list: readonly unknown[] = value;
    return fc.constantFrom<unknown[]>(
      [],
      [...list, ...list],
      [...list].reverse(),
      list.slice(1),
      list.slice(0, 1),
      Array(40).fill(list[0]),
    );
  }
  if (typeof value === "function") {
    return fc.constantFrom(
      () => NaN,
      () => Infinity,
      () => -1,
      () => 1e308,
      () => 5e-324,
      (t: number) => t,
    );
  }
  return fc.constant(value);
}
