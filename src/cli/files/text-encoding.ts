import { InputError } from "../../errors.ts";
import { decodeText } from "../../read/index.ts";

/** Text of a file, and the way back to bytes in the encoding that the file has. */
export interface EncodedText {
  readonly text: string;
  readonly encode: (text: string) => Uint8Array;
}

/**
 * The text of a file with its encoding: UTF-8 with or without a byte-order mark, UTF-16, Windows-1252.
 * @throws {InputError} What `decodeText` throws; `malformed-file` where the bytes would not come back as they are.
 */
export function encodedText(bytes: Uint8Array): EncodedText {
  const text = decodeText(bytes);
  const encode = encoderFor(bytes);
  // Whatever is kept in the file is kept to the byte, or nothing is changed.
  const back = encode(text);
  if (back.length === bytes.length && back.every((byte, i) => byte === bytes[i])) return { text, encode };
  throw new InputError(
    "malformed-file",
    "the file cannot be added to without changing what is in it; save it as UTF-8 first.",
    { path: ["text"] },
  );
}

function encoderFor(bytes: Uint8Array): (text: string) => Uint8Array {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return (text) => utf16(text, true);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return (text) => utf16(text, false);
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\uFEFF" : "";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return (text) => new TextEncoder().encode(mark + text);
  } catch {
    return windows1252;
  }
}

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const whole = `\uFEFF${text}`;
  const view = new DataView(new ArrayBuffer(whole.length * 2));
  for (let i = 0; i < whole.length; i++) view.setUint16(i * 2, whole.charCodeAt(i), littleEndian);
  return new Uint8Array(view.buffer);
}

function windows1252(text: string): Uint8Array {
  const letters = new TextDecoder("windows-1252").decode(Uint8Array.from({ length: 256 }, (_, byte) => byte));
  return Uint8Array.from(text, (letter) => {
    const byte = letters.indexOf(letter);
    if (byte >= 0) return byte;
    throw new InputError(
      "malformed-file",
      `the file is written in Windows-1252, which has no ${letter}; save it as UTF-8 first.`,
      { path: ["text"], value: letter },
    );
  });
}
