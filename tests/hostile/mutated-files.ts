import { type Random, oneOf } from "./random-numbers.ts";

/** Cells that readers stumble over. */
const CELLS: readonly string[] = [
  "",
  " ",
  "NA",
  "nan",
  "null",
  "M",
  "-9999",
  "999.9",
  "9999",
  "85",
  "-127",
  "Infinity",
  "-Infinity",
  "1e308",
  "1e999",
  "5e-324",
  "-0",
  "0x10",
  "12,5",
  "1.234,5",
  "−3",
  "1 000",
  "٣",
  "true",
  "=1+1",
  "'=1+1",
  "@x",
  "__proto__",
  "constructor",
  "toString",
  "(none)",
  "retracted",
  "row 3",
  "0001-01-01",
  "9999-12-31",
  "0000-01-01",
  "2024-02-29",
  "2023-02-29",
  "31.12.1899",
  "02/30/2026",
  "13/13/2026",
  "2026-03-08 02:30",
  "2026-11-01 01:30",
  "2011-12-30",
  "2026-06-08T24:00Z",
  "2026-06-08T12:00+99:99",
  "99999999",
  "20260230",
  "12:61",
  "00:00",
  "24:00",
  "0:00 PM",
  "13:00 AM",
  "°",
  "\u202E",
  "\uFEFF",
  "\u00A0",
  "İ",
  "x".repeat(3000),
  "👩‍👩‍👧‍👦",
  '"',
  '""',
  'a"b',
  "a\tb",
  "died as pupa",
  "lost",
  "not yet",
  "EXAMPLE: delete this row",
  "monarch",
  "Danaus plexippus",
  "1.5",
  "-1",
  "0",
  "1e9",
  "123456789012",
];

/** Values of a JSON document. */
const VALUES: readonly string[] = [
  "null",
  "true",
  "0",
  "-0",
  "1e308",
  "1e999",
  "-1",
  "0.1",
  '""',
  '"x"',
  '"NaN"',
  "[]",
  "{}",
  "[[]]",
  '{"__proto__":{"polluted":true}}',
  '{"constructor":{"prototype":{"polluted":true}}}',
  '"2026-02-30"',
  '"9999-12-31"',
  '"__proto__"',
  "1e-320",
  "99999999999999999999",
  '"\\u0000"',
  '"\\ud800"',
  "[1,2,3]",
];

type Change = (text: string, random: Random) => string;

const lines =
  (change: (list: string[], at: number, random: Random) => void): Change =>
  (text, random) => {
    const list = text.split("\n");
    change(list, Math.floor(random() * list.length), random);
    return list.join("\n");
  };

const cell = (put: (old: string, random: Random) => string): Change =>
  lines((list, at, random) => {
    const parts = (list[at] ?? "").split(/([,;\t|])/);
    const i = 2 * Math.floor((random() * (parts.length + 1)) / 2);
    parts[i] = put(parts[i] ?? "", random);
    list[at] = parts.join("");
  });

/** Ways in which files go wrong on their way, and ways in which somebody makes them wrong. */
const TEXT_CHANGES: readonly Change[] = [
  lines((list, at) => list.splice(at, 1)),
  lines((list, at) => list.splice(at, 0, list[at] ?? "")),
  lines((list, at, random) => {
    const other = Math.floor(random() * list.length);
    [list[at], list[other]] = [list[other] ?? "", list[at] ?? ""];
  }),
  lines((list, at) => (list[at] = `${list[at] ?? ""}${list[at] ?? ""}`)),
  lines((list, at) => list.splice(at, 0, "", "  ")),
  lines((list, at, random) => (list[at] = (list[at] ?? "").slice(0, Math.floor(random() * 20)))),
  lines((list, at) => list.splice(at, 0, "A title; with, marks\tand | bars")),
  cell((_, random) => oneOf(CELLS, random)),
  cell((_, random) => oneOf(CELLS, random)),
  cell((_, random) => oneOf(CELLS, random)),
  cell((old) => `"${old}"`),
  cell((old) => `"${old}`),
  cell((old) => `${old}"`),
  cell((old) => `"${old}\n${old}"`),
  cell((old, random) => `${old}${oneOf([",", ";", "\t", "|", '"', "\r", "\0", "\u2028"], random)}`),
  cell((old) => old.replace(/\d/g, "9")),
  cell((old) => old.toUpperCase()),
  (text) => text.replaceAll("\n", "\r\n"),
  (text) => text.replaceAll("\n", "\r"),
  (text, random) => text.replace(/\n/g, () => oneOf(["\n", "\r\n", "\r", "\n\n"], random)),
  (text, random) => text.replaceAll(oneOf([",", ";", "\t"], random), oneOf([",", ";", "\t", "|"], random)),
  (text) => text.replaceAll(".", ","),
  (text) => `\uFEFF${text}`,
  (text) => `\uFEFF\uFEFF${text}`,
  (text, random) => text.slice(0, Math.floor(random() * text.length)),
  (text, random) => text.slice(Math.floor(random() * text.length)),
  (text) => text + text,
  (text) => text.trimEnd(),
  (text) => `sep=;\n${text}`,
  (text, random) => {
    const at = Math.floor(random() * text.length);
    return text.slice(0, at) + String.fromCharCode(Math.floor(random() * 0x250)) + text.slice(at + 1);
  },
  (text, random) => {
    const values = [...text.matchAll(/:\s*("[^"]*"|-?[\d.]+|null)/g)];
    if (values.length === 0) return text;
    const { index, 0: found } = oneOf(values, random);
    return `${text.slice(0, index)}:${oneOf(VALUES, random)}${text.slice(index + found.length)}`;
  },
  (text, random) => {
    const keys = [...text.matchAll(/"(\w+)"\s*:/g)];
    if (keys.length === 0) return text;
    const { index, 0: found } = oneOf(keys, random);
    const name = oneOf(["__proto__", "constructor", "toString", "", "on", "date"], random);
    return `${text.slice(0, index)}"${name}":${text.slice(index + found.length)}`;
  },
];

/** Changes of bytes, after which a text may not be one any more. */
const BYTE_CHANGES: readonly ((bytes: Buffer, random: Random) => Buffer)[] = [
  (bytes, random) => {
    const changed = Buffer.from(bytes);
    for (let i = 0; i < 3 && changed.length > 0; i++)
      changed[Math.floor(random() * changed.length)] = Math.floor(random() * 256);
    return changed;
  },
  (bytes, random) => {
    const changed = Buffer.from(bytes);
    if (changed.length > 0) {
      const at = Math.floor(random() * changed.length);
      changed[at] = (changed[at] ?? 0) ^ (1 << Math.floor(random() * 8));
    }
    return changed;
  },
  (bytes) => Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(bytes.toString("utf8"), "utf16le")]),
  (bytes) =>
    Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(bytes.toString("utf8"), "utf16le").swap16()]),
  (bytes) => Buffer.from(bytes.toString("utf8"), "latin1"),
  (bytes) => Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), bytes]),
  (bytes, random) => bytes.subarray(0, Math.floor(random() * bytes.length)),
  (bytes) => Buffer.concat([bytes, Buffer.from([0])]),
  (bytes) => Buffer.concat([Buffer.from([0xff, 0xfe]), bytes]),
];

/** A file with one to four faults. */
export function mutatedFile(text: string, random: Random): string | Uint8Array {
  let changed = text;
  const faults = 1 + Math.floor(random() * 3);
  for (let i = 0; i < faults; i++) changed = oneOf(TEXT_CHANGES, random)(changed, random);
  // A fault that doubles the text must not do so over and over.
  changed = changed.slice(0, 100_000);
  return random() < 0.25
    ? new Uint8Array(oneOf(BYTE_CHANGES, random)(Buffer.from(changed), random))
    : changed;
}
