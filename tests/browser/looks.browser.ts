import { readdirSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { findings } from "./notebook-page.ts";

const NOTEBOOKS = readdirSync(new URL("../../notebooks/", import.meta.url))
  .filter((name) => name.endsWith(".html"))
  .map((name) => name.replace(/\.html$/, ""))
  .sort();

describe.skipIf(!browserAtHand())("every notebook", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));
  afterAll(() => browser.close());

  test.each(NOTEBOOKS)("%s opens from disk, can be read by all, and fits every screen", async (name) => {
    const begun = performance.now();
    const { page, requests, complaints }: OpenNotebook = await openNotebook(browser, name);
    console.log(`${name} shows its answer after ${((performance.now() - begun) / 1000).toFixed(1)} s`);
    await picture(page, `${name}-light`);
    expect(await findings(page), "light").toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    await picture(page, `${name}-dark`);
    for (const width of [768, 390, 320]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await sideways(page), `${width} pixels wide`).toBeLessThanOrEqual(width);
    }
    // 320 pixels are also what is left of 640 at 200 % zoom.
    await picture(page, `${name}-phone`);
    expect(await findings(page), "dark, on a phone").toEqual([]);
    await page.emulateMedia({ colorScheme: "light", media: "print" });
    await page.setViewportSize({ width: 760, height: 1000 });
    await picture(page, `${name}-print`);
    expect(await sideways(page), "printed").toBeLessThanOrEqual(760);
    expect([...requests, ...complaints]).toEqual([]);
  });
});

function sideways(page: Page): Promise<number> {
  return page.evaluate(async () => {
    // Figures are drawn anew for a new width.
    await new Promise((resolve) => setTimeout(resolve, 300));
    return document.documentElement.scrollWidth;
  });
}
