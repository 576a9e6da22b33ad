import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withRow } from "../../src/cli/log/log-append.ts";
import { readLog } from "../../src/read/log/log-csv.ts";
import { refusalOf } from "../support/refusal.ts";

const CELLS = { stage: "pupated", on: "2026-06-25", count: "3", note: "größer; schöner" };

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
  return littleEndian ? bytes : bytes.swap16();
}

const added = (bytes: Uint8Array | string, cells: Parameters<typeof withRow>[1] = CELLS): string =>
  Buffer.from(withRow(typeof bytes === "string" ? Buffer.from(bytes) : bytes, cells).bytes).toString("utf8");

describe("a row more", () => {
  it("in the dialect of the file: semicolons, CR LF, a byte-order mark, columns in its own order", () => {
    const file = "\uFEFFNote;Count;Stage;Seen on\r\nkühl;4;hatched;11.06.2026\r\n";
    expect(added(file)).toBe(`${file}"größer; schöner";3;pupated;2026-06-25\r\n`);
    expect(readLog(added(file), { dateOrder: "day-first" }).entries.at(-1)).toMatchObject({
      stage: "pupa",
      note: "größer; schöner",
      row: 3,
    });
  });

  it.each([
    [
      "tabs",
      "stage\tseen on\tcount\tnote\nhatched\t2026-06-11\t4\t\n",
      "pupated\t2026-06-25\t3\tgrößer; schöner\n",
    ],
    ["bars", "stage|seen on|count|note\nhatched|2026-06-11|4|\n", "pupated|2026-06-25|3|größer; schöner\n"],
    [
      "old line ends",
      "stage,seen on,count,note\rhatched,2026-06-11,4,\r",
      "pupated,2026-06-25,3,größer; schöner\r",
    ],
    [
      "no line end after the last row",
      "stage,seen on,count,note\nhatched,2026-06-11,4,",
      "\npupated,2026-06-25,3,größer; schöner\n",
    ],
    ["nothing but a header", "stage,seen on,count,note", "\npupated,2026-06-25,3,größer; schöner\n"],
    [
      "quotes, with a line end within",
      'stage,seen on,count,note\nhatched,2026-06-11,4,"two\nlines, ""quoted"""\n',
      "pupated,2026-06-25,3,größer; schöner\n",
    ],
  ])("%s", (_, file, row) => {
    expect(added(file)).toBe(file + row);
  });

  it.each([
    [
      "UTF-16, little end first",
      utf16("stage\tseen on\tcount\tnote\r\nhatched\t2026-06-11\t4\tkühl\r\n", true),
    ],
    [
      "UTF-16, big end first",
      utf16("stage\tseen on\tcount\tnote\r\nhatched\t2026-06-11\t4\tkühl\r\n", false),
    ],
    ["Windows-1252", Buffer.from("stage;seen on;count;note\r\nhatched;2026-06-11;4;k\xfchl\r\n", "latin1")],
    ["UTF-8 with a mark", Buffer.from("\uFEFFstage,seen on,count,note\nhatched,2026-06-11,4,kühl\n")],
  ])("%s: all bytes stay, and the row is read back", (_, bytes) => {
    const { bytes: after, row } = withRow(bytes, CELLS);
    expect(Buffer.from(after.subarray(0, bytes.length)).equals(Buffer.from(bytes))).toBe(true);
    const { entries } = readLog(after);
    expect(entries.map(({ note }) => note)).toEqual(["kühl", "größer; schöner"]);
    expect(entries.at(-1)?.row).toBe(row);
  });

  it("what an encoding cannot write is refused", () => {
    const bytes = Buffer.from("stage,seen on,note\r\nhatched,2026-06-11,k\xfchl\r\n", "latin1");
    expect(
      refusalOf(() => withRow(bytes, { stage: "pupa", on: "2026-06-25", note: "蛹" })).message,
    ).toContain("has no 蛹; save it as UTF-8");
  });

  it("the header grows by what the row needs; title lines and rows stay", () => {
    const file = 'Porch "A", 2026\n\nstage,seen on\nhatched,2026-06-11\n';
    const cells = {
      stage: "pupated",
      on: "2026-06-25",
      count: "1",
      corrects: "4",
      written: "2026-06-25T18:04:05Z",
    };
    expect(added(file, cells)).toBe(
      'Porch "A", 2026\n\nstage,seen on,corrects,written\nhatched,2026-06-11\npupated,2026-06-25,4,2026-06-25T18:04:05Z\n',
    );
    expect(readLog(added(file, cells)).entries).toMatchObject([{ stage: "pupa", row: 5 }]);
  });

  it("the number of the row is the one that reading gives it, and rows before it do not change", () => {
    const cell = fc.string({ unit: fc.constantFrom("a", '"', ",", ";", "\n", "é", " ", "=") });
    const rows = fc.array(fc.tuple(cell, fc.boolean()), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        rows,
        fc.constantFrom(",", ";"),
        fc.constantFrom("\n", "\r\n"),
        fc.boolean(),
        cell,
        (notes, delimiter, newline, open, note) => {
          const quote = (text: string): string => `"${text.replaceAll('"', '""')}"`;
          const lines = notes.flatMap(([text, blank]) => [
            ["hatched", "2026-06-11", "4", quote(text)].join(delimiter),
            ...(blank ? [""] : []),
          ]);
          const file =
            [["stage", "seen on", "count", "note"].join(delimiter), ...lines].join(newline) +
            (open ? "" : newline);
          const before = readLog(file).entries;
          const { bytes, row } = withRow(Buffer.from(file), {
            stage: "pupa",
            on: "2026-06-25",
            count: "2",
            note,
          });
          const { entries } = readLog(bytes);
          expect(entries.slice(0, -1)).toEqual(before);
          expect(entries.at(-1)).toMatchObject({ stage: "pupa", count: 2, row, note: note.trim() || null });
        },
      ),
      { numRuns: 500 },
    );
  });
});
