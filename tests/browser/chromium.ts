import { existsSync } from "node:fs";

/** The browser to test in. */
export const CHROMIUM = process.env["CHROMIUM"] ?? "/usr/bin/chromium";

/**
 * Whether there is a browser to test in. In continuous integration its absence is a failure, elsewhere a
 * reason to skip, which is said.
 */
export function browserAtHand(): boolean {
  if (existsSync(CHROMIUM)) return true;
  const missing = `no browser at ${CHROMIUM}; install Chromium or name it in the variable CHROMIUM`;
  if (process.env["CI"]) throw new Error(missing);
  console.warn(`Browser tests skipped: ${missing}.`);
  return false;
}
