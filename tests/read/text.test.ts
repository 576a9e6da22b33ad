import { describe, expect, test } from "vitest";
import { LARGEST_TEXT_BYTES, decodeText, readDailyCsv, readTemperatures } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes } from "./fixture.ts";

const TABLE = "date,min °C,max °C\n2026-05-01,8.5,24\n";
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  for (let i = 0; i < text.length; i++) view.setUint16(2 + 2 * i, text.charCodeAt(i), littleEndian);
  return bytes;
}

describe("decodeText", () => {
  test.each([
    ["UTF-8", utf8(TABLE)],
    ["UTF-8 with a byte-order mark", utf8(`\uFEFF${TABLE}`)],
    ["UTF-16 LE", utf16(TABLE, true)],
    ["UTF-16 BE", utf16(TABLE, false)],
  ])("%s", (_, bytes) => {
    expect(decodeText(bytes)).toBe(TABLE);
  });

  test("bytes that are not UTF-8 are Windows-1252, and that is noted", () => {
    const bytes = Uint8Array.from(TABLE, (letter) => letter.charCodeAt(0));
    expect(decodeText(bytes)).toBe(TABLE);
    expect(codes(readDailyCsv(bytes).notes)).toContain("text-encoding");
  });

  test("a byte-order mark in text is left out", () => {
    expect(readTemperatures(`\uFEFF${TABLE}`).series.kind).toBe("daily");
  });

  test.each([
    ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0])],
    ["spreadsheet workbook", new Uint8Array([0x50, 0x4b, 0x03, 0x04, 20, 0])],
    ["NUL bytes", new Uint8Array([0x64, 0, 0x61, 0])],
    ["control character 7", utf8("date,min,max\n2026-05-01,\u0007,2")],
  ])("binary data is refused: %s", (what, bytes) => {
    const error = refusalOf(() => readTemperatures(bytes));
    expect(error.code).toBe("binary-input");
    expect(error.message).toContain(what);
    expect(error.message).toContain("CSV or JSON");
  });

  test("broken UTF-16 is refused", () => {
    expect(refusalOf(() => decodeText(new Uint8Array([0xff, 0xfe, 0x00, 0xd8]))).code).toBe("malformed-file");
  });

  test("an input above the limit is refused with a way out", () => {
    const error = refusalOf(() => readTemperatures(new Uint8Array(LARGEST_TEXT_BYTES + 1)));
    expect(error.code).toBe("input-too-large");
    expect(error.message).toContain("split it by year");
  });

  test.each(["", "  \n\n", "\uFEFF"])("empty text is refused: %j", (text) => {
    expect(refusalOf(() => readTemperatures(text)).message).toContain("empty");
  });
});
