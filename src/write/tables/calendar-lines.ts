/**
 * Content lines of an iCalendar object. RFC 5545, section 3.1: lines end in CR LF and, the end left out, should be no
 * longer than 75 octets; a longer one goes on in the next, which begins with a blank that counts among the 75.
 * A character of several octets stays whole.
 */
export function contentLines(lines: readonly string[]): string {
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

const MOST_OCTETS = 75;

function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      parts.push(part);
      part = "";
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join("\r\n ");
}

function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

// Section 3.3.11 allows no control character but the tab.
const CONTROL = /[\u0000-\u0008\u000b-\u001f\u007f]/g;

/** A text as a property value: RFC 5545, section 3.3.11, backslashes before \ ; , and `\n` for a line end. */
export function textValue(text: string): string {
  return text
    .replace(/\r\n?/g, "\n")
    .replace(CONTROL, "")
    .replace(/[\\;,]/g, "\\$&")
    .replaceAll("\n", "\\n");
}

/** A civil day as a DATE value: RFC 5545, section 3.3.4. */
export function dateValue(day: string): string {
  return day.replaceAll("-", "");
}
