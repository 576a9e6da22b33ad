import { InputError } from "../errors.ts";
import type { Note } from "../notes.ts";

/**
 * The largest text that is read at once, bytes: 64 MiB, some two years of readings every two seconds.
 * Anything larger is almost always the wrong file, and would fill a browser's memory before failing.
 */
export const LARGEST_TEXT_BYTES = 64 * 1024 * 1024;

// First bytes of files that people pick by mistake, so that the refusal can name what they picked.
const SIGNATURES: readonly { readonly bytes: readonly number[]; readonly what: string }[] = [
  { bytes: [0x50, 0x4b, 0x03, 0x04], what: "a spreadsheet workbook or another zip archive" },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: "an old spreadsheet workbook" },
  { bytes: [0x25, 0x50, 0x44, 0x46], what: "a PDF document" },
  { bytes: [0x1f, 0x8b], what: "a gzip archive" },
  { bytes: [0x89, 0x50, 0x4e, 0x47], what: "a picture" },
  { bytes: [0xff, 0xd8, 0xff], what: "a picture" },
];

// Control characters that no table holds; tab, line ends and form feed are left out.
const CONTROL = /[\u0000-\u0008\u000b\u000e-\u001f\u007f]/;

/**
 * Text from the bytes of a file. A byte-order mark decides between UTF-8 and the two UTF-16 orders;
 * without one the bytes are UTF-8, or Windows-1252 where they are not valid UTF-8 (older logger
 * software writes the degree sign that way).
 * @param bytes The whole file.
 * @returns The text without its byte-order mark.
 * @throws {InputError} `input-too-large`, `binary-input`, `malformed-file` (broken UTF-16).
 * @example
 * decodeText(new Uint8Array([0xef, 0xbb, 0xbf, 0x32, 0x34])) // → "24"
 */
export function decodeText(bytes: Uint8Array): string {
  return plainText(bytes).text;
}

/** {@link decodeText} for text or bytes, with a note where the encoding had to be deduced. */
export function plainText(input: string | Uint8Array): { text: string; notes: Note[] } {
  if (typeof input !== "string" && !(input instanceof Uint8Array)) {
    throw new InputError(
      "malformed-file",
      "the input is neither text nor bytes; give a string or a Uint8Array.",
      {
        path: ["text"],
        value: input,
      },
    );
  }
  if (input.length > LARGEST_TEXT_BYTES) {
    throw new InputError(
      "input-too-large",
      `the input has ${input.length} bytes, more than the ${LARGEST_TEXT_BYTES} that are read at once; split it by year and join the series.`,
      { path: ["text"], value: input.length },
    );
  }
  const { text, notes } = typeof input === "string" ? { text: input, notes: [] } : decoded(input);
  const control = CONTROL.exec(text);
  if (control) {
    throw binary(`has the control character ${control[0].charCodeAt(0)} at position ${control.index + 1}`);
  }
  const withoutMark = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (withoutMark.trim() === "") {
    throw new InputError(
      "malformed-file",
      "the text is empty; it must be a table with a header row, or JSON.",
      {
        path: ["text"],
        value: "",
      },
    );
  }
  return { text: withoutMark, notes };
}

function decoded(bytes: Uint8Array): { text: string; notes: Note[] } {
  const known = SIGNATURES.find(({ bytes: first }) => first.every((byte, i) => bytes[i] === byte));
  if (known) throw binary(`is ${known.what}`);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: utf16(bytes, "utf-16le"), notes: [] };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: utf16(bytes, "utf-16be"), notes: [] };
  // Said here because the control character test would only name the first NUL, not the likely cause.
  if (bytes.includes(0)) throw binary("has NUL bytes and no byte-order mark that would make it UTF-16");
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), notes: [] };
  } catch {
    return {
      text: new TextDecoder("windows-1252").decode(bytes),
      notes: [
        {
          code: "text-encoding",
          message: "The bytes are not UTF-8 and were read as Windows-1252; check any letters with accents.",
        },
      ],
    };
  }
}

function utf16(bytes: Uint8Array, encoding: "utf-16le" | "utf-16be"): string {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw new InputError(
      "malformed-file",
      `the byte-order mark says ${encoding.toUpperCase()}, but the bytes are not valid in it; save the file as UTF-8.`,
      { path: ["text"] },
    );
  }
}

function binary(what: string): InputError {
  return new InputError("binary-input", `the input ${what}; export it as plain text (CSV or JSON, UTF-8).`, {
    path: ["text"],
  });
}
