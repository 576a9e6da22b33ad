import { expect } from "vitest";

/** That a page fits a narrow screen or a sheet of paper and carries nothing but text. */
export function expectPlainPage(text: string): void {
  for (const line of text.split("\n")) {
    expect(Array.from(line).length, line).toBeLessThanOrEqual(80);
    expect(line, "blanks at the end").toBe(line.trimEnd());
  }
  expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
  expect(text).not.toMatch(/undefined|NaN|null|\[object/);
  expect(text).not.toMatch(/\n\n\n/);
}
