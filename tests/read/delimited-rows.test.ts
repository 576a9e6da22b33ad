import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { delimitedRows, firstRows } from "../../src/read/table/delimited-rows.ts";
import { readDailyCsv, readGhcnCsv, readTemperatures } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";

const delimiters = fc.constantFrom(",", ";", "\t", "|");

// papaparse, a general reader of CSV, is the reference for what the rows of a text are and whether it is quoted well.
function reference(text: string, delimiter: string): { rows: string[][]; faultyRow: number | null } {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, newline: "\n" });
  const [error] = errors;
  return {
    // It takes a line end at the end of the text for the beginning of one more row.
    rows: text.endsWith("\n") ? data.slice(0, -1) : data,
    faultyRow: error ? (error.row ?? 0) + 1 : null,
  };
}

// The one difference: papaparse passes over blanks between a closing mark and a line end, but not where the text
// ends instead of the line. A last line without a line end is a line like the others, so they are passed over too.
const withoutLastBlanks = (text: string): string => text.replace(/" +$/, '"');

function agrees(text: string, delimiter: string): void {
  const read = reference(text, delimiter);
  const { rows, faultyRow } = read.faultyRow === null ? read : reference(withoutLastBlanks(text), delimiter);
  if (faultyRow === null) expect(delimitedRows(text, delimiter)).toEqual(rows);
  else expect(refusalOf(() => delimitedRows(text, delimiter)).path).toEqual(["row", faultyRow]);
}

describe("rows of a delimited text", () => {
  it("are those of papaparse for tables written in any way", () => {
    const cell = fc.tuple(
      fc.string({ unit: fc.constantFrom("a", "7", "é", '"', ",", ";", "\t", "|", " ", "\n"), maxLength: 6 }),
      fc.boolean(),
      fc.constantFrom("", "", " ", "  "),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 6 }),
        delimiters,
        (table, delimiter) => {
          const written = ([text, quoted, blanks]: [string, boolean, string]): string =>
            quoted || /["\n\t,;|]/.test(text) ? `"${text.replaceAll('"', '""')}"${blanks}` : text;
          const lines = table.map((row) => row.map(written).join(delimiter)).join("\n");
          const cells = table.map((row) => row.map(([text]) => text));
          expect(delimitedRows(`${lines}\n`, delimiter)).toEqual(cells);
          agrees(`${lines}\n`, delimiter);
          agrees(lines, delimiter);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("are those of papaparse for any text, or the text is refused in the same row", () => {
    const text = fc.string({ unit: fc.constantFrom("a", '"', '"', ",", ";", " ", "\n"), maxLength: 14 });
    fc.assert(fc.property(text, delimiters, agrees), { numRuns: 20_000 });
  });

  it.each([
    ['5" pot,2\n', [['5" pot', "2"]]],
    ['a"",b"\n', [['a""', 'b"']]],
    ['"a" ,"b"\t\n"c"  ', [["a", "b"], ["c"]]],
    ['"one\ntwo",3\n\n4', [["one\ntwo", "3"], [""], ["4"]]],
    ['"a ""b"" c",""', [['a "b" c', ""]]],
    ["a,b\n", [["a", "b"]]],
  ])("of %j are %j", (text, rows) => {
    expect(delimitedRows(text, ",")).toEqual(rows);
  });

  it.each([
    ['a\n"b', 2],
    ['a\n"b\nc\nd', 2],
    ['"two\nlines"\n"b"c', 2],
    ['\n"b" c,d', 2],
    ['a,"b""', 1],
    ['a,"b"c"', 1],
  ])("are refused for %j, by row %d", (text, row) => {
    expect(refusalOf(() => delimitedRows(text, ",")).message).toBe(
      `row ${row} has a quotation mark that is not closed or not doubled; a quoted cell must begin and end with one.`,
    );
  });

  it("are cut in time that grows with the text, however it is quoted", () => {
    const length = 1_000_000;
    for (const unit of ['"', '""', '",', '"a" ', '"" ,', '"\n', ' "', '","', '" ']) {
      const text = unit.repeat(length / unit.length);
      const start = performance.now();
      try {
        delimitedRows(text, ";");
      } catch (error) {
        expect(error).toMatchObject({ code: "malformed-file" });
      }
      expect(performance.now() - start, unit).toBeLessThan(5000);
    }
  }, 60_000);

  it("hold the first rows of a text, whatever its quotation marks", () => {
    const text = fc.string({ unit: fc.constantFrom("a", '"', ",", ";", " ", "\n"), maxLength: 20 });
    fc.assert(
      fc.property(text, delimiters, fc.integer({ min: 1, max: 4 }), (whole, delimiter, most) => {
        const first = firstRows(whole, delimiter, most);
        expect(first.length).toBeLessThanOrEqual(most);
        if (reference(whole, delimiter).faultyRow === null) {
          expect(first).toEqual(delimitedRows(whole, delimiter).slice(0, most));
        }
      }),
      { numRuns: 5000 },
    );
    expect(firstRows('"date";"min"\n"a";"b"', ",", 9)).toEqual([["date;min"], ["a;b"]]);
    expect(firstRows('a,b\nc,"d\ne,f', ",", 9)).toEqual([
      ["a", "b"],
      ["c", "d"],
      ["e", "f"],
    ]);
  });
});

describe("a table with a quotation mark that is not closed or doubled", () => {
  const told = (row: number): RegExp => new RegExp(`row ${row} has a quotation mark that is not closed`);

  it("is refused, also where the mark stands in the header", () => {
    for (const [text, row] of [
      ['date,min,max,"note\n2026-06-08,12,24,\n', 1],
      ['"date";"min";"max"\n"2026-06-08";"12"3;"24"\n', 2],
      ['date,min,max\n2026-06-08,12,24\n2026-06-09,12,"24\n', 3],
    ] as const) {
      expect(refusalOf(() => readDailyCsv(text, { unit: "C" })).message).toMatch(told(row));
    }
  });

  it("is refused in a GHCN-Daily by-station file", () => {
    const line = (day: string, flags = ",,C,"): string => `USW00094728,${day},TMIN,122${flags}`;
    for (const text of [
      [line("20260608"), line("20260609", ',"x,C,'), line("20260610")].join("\n"),
      [line("20260608"), line("20260609", ',"x"y,,C,'), line("20260610")].join("\n"),
    ]) {
      expect(refusalOf(() => readGhcnCsv(text)).message).toMatch(told(2));
      expect(refusalOf(() => readTemperatures(text)).message).toMatch(told(2));
    }
  });

  it("whose fields are well quoted is read with whatever separator it has", () => {
    for (const delimiter of [",", ";", "\t", "|"]) {
      const line = (cells: readonly string[]): string => cells.map((cell) => `"${cell}"`).join(delimiter);
      const text = [line(["date", "min", "max"]), line(["2026-06-08", "12", "24"])].join("\n");
      expect(readDailyCsv(text, { unit: "C" }).series.max[0]).toBe(24);
    }
  });
});
