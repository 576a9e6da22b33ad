import { join } from "node:path";
import type { Browser } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { digestOf, results } from "../determinism/digest.ts";
import { differences } from "../determinism/nearly.ts";
import { launch } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";

const ROOT = new URL("../..", import.meta.url).pathname;

/** The digests as one script that leaves them behind as a global function. */
async function bundled(): Promise<string> {
  const built = await build({
    root: ROOT,
    configFile: false,
    logLevel: "silent",
    build: {
      write: false,
      minify: false,
      lib: { entry: join(ROOT, "tests/determinism/digest.ts"), formats: ["iife"], name: "moltlineDigests" },
    },
  });
  const [one] = Array.isArray(built) ? built : [built];
  const chunk = "output" in one ? one.output[0] : undefined;
  if (chunk === undefined) throw new Error("nothing was bundled");
  return chunk.code;
}

// Chromium and Node share an engine, but not its version, and versions of V8 round Math.sin, Math.asin or Math.exp
// differently in the last digit. So what people read is the same to the byte, and raw numbers are the same to 1e-9.
const READ_BY_PEOPLE = [
  "plan as text",
  "plan as page",
  "calendar",
  "tables",
  "release",
  "species",
  "read anew",
];

describe.skipIf(!browserAtHand())("the digests of all results in Chromium", () => {
  let browser: Browser;
  let script = "";
  const here = results();
  beforeAll(async () => {
    [browser, script] = await Promise.all([launch(), bundled()]);
  });
  afterAll(() => browser.close());

  test.each([
    ["de-DE", "Pacific/Apia"],
    ["ar-EG", "America/St_Johns"],
  ])("are those of Node, in %s and %s", async (locale, timezoneId) => {
    const context = await browser.newContext({ locale, timezoneId });
    const page = await context.newPage();
    await page.setContent("<!doctype html><title>digests</title>");
    await page.addScriptTag({ content: script });
    const set = await page.evaluate("Intl.DateTimeFormat().resolvedOptions()");
    expect(set).toMatchObject({ locale: expect.stringMatching(locale.slice(0, 2)), timeZone: timezoneId });
    const there = await page.evaluate<Record<string, string>>("moltlineDigests.results()");
    expect(Object.keys(there)).toEqual(Object.keys(here));
    for (const name of READ_BY_PEOPLE)
      expect(digestOf(there[name] ?? ""), name).toBe(digestOf(here[name] ?? "-"));
    for (const [name, text] of Object.entries(here))
      expect(differences(text, there[name] ?? "", name === "rate models" ? 1e-6 : 1e-9), name).toEqual([]);
    await context.close();
  });
});
