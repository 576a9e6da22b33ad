import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { unguarded } from "../../src/read/table/guarded-cell.ts";
import { csvLine, csvText, guarded } from "../../src/write/layout/csv-table.ts";

/** Texts that are likely to go wrong in a table. */
const awkward = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom("'", "=", "+", "-", "@", "1", "0", ".", ",", ";", '"', "\t", "\r", "\n", " "),
  }),
);

describe("the guard against formulas", () => {
  // The list: OWASP, "CSV Injection" (from memory).
  it.each(["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\tx", "\rx", "\nx", "＝1", "'=1", "''@x", "-", "+5"])(
    "%j gets an apostrophe",
    (text) => expect(guarded(text)).toBe(`'${text}`),
  );

  it.each(["-5", "-0.5", "12", "a=1", "", "'", "'tis", "2026-06-08", "(none)"])("%j stays", (text) =>
    expect(guarded(text)).toBe(text),
  );

  it("is taken off again without loss, whatever the text", () => {
    fc.assert(
      fc.property(awkward, (text) => {
        expect(unguarded(guarded(text))).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  it("leaves no cell that begins a formula", () => {
    fc.assert(
      fc.property(fc.array(awkward, { minLength: 1, maxLength: 4 }), (cells) => {
        const [read = []] = Papa.parse<string[]>(csvText(cells, []), {
          delimiter: ",",
          newline: "\r\n",
        }).data;
        for (const cell of read) expect(cell).not.toMatch(/^(?:[+=@\t\r\n＝＋－＠]|-(?!\d+(?:\.\d+)?$))/);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("lines of a table", () => {
  it("RFC 4180, section 2: CR LF, quotes around what needs them, quotes doubled", () => {
    expect(csvText(["a", "b"], [['say "hi"', "x,y"]])).toBe('a,b\r\n"say ""hi""","x,y"\r\n');
    expect(csvLine(["x,y", "x;y", "two\nlines"], ";")).toBe('x,y;"x;y";"two\nlines"');
  });

  it("writes numbers as they are, nothing for nothing, and no control characters", () => {
    expect(csvLine([-0.5, 0, null, "", "a\u0000b\u0007c"])).toBe("-0.5,0,,,abc");
  });

  it("a general reader of tables gives the cells back", () => {
    fc.assert(
      fc.property(
        fc.array(awkward, { minLength: 2, maxLength: 5 }),
        fc.constantFrom(",", ";", "\t", "|"),
        (cells, delimiter) => {
          const { data } = Papa.parse<string[]>(csvLine(cells, delimiter), { delimiter, newline: "\r\n" });
          const written = cells.map((cell) =>
            guarded(
              cell
                .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, "")
                .replace(/\r\n?/g, "\n")
                .trim(),
            ),
          );
          expect(data[0]).toEqual(written);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
