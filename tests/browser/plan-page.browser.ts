import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { planPage } from "../../src/write/plan/plan-page.ts";
import { inventedForecast } from "../support/invented-season.ts";
import { picture, launch } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Printable area in CSS pixels: the sheet less 8 mm on each side. */
const SHEETS = { A4: { width: 733, height: 1062 }, Letter: { width: 756, height: 995 } } as const;

const name = '<script>document.title="caught"</script> & "porch"';
const white = findSpecies("pieris-rapae");
const porch = { name, lifeCycle: danausPlexippus, forecast: inventedForecast() };
const shelf = {
  name: "shelf",
  lifeCycle: white,
  forecast: inventedForecast({ lifeCycle: white, found: { stage: "egg", on: "2026-06-10", count: 4 } }),
};
const options = {
  away: ["2026-07-04", "2026-07-05"],
  supplies: [{ leaves: 100 }],
  leavesPerStem: 12,
};
const html = planPage(dayPlan([porch], options));
const several = planPage(dayPlan([porch, shelf], options));

describe.skipIf(!browserAtHand())("the page of a day plan", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());

  const opened = async (
    size: { width: number; height: number },
    media: "print" | "screen",
    text = html,
  ): Promise<Page> => {
    const page = await browser.newPage({ viewport: size });
    await page.emulateMedia({ media });
    await page.setContent(text);
    return page;
  };

  test("runs nothing that stands in a name", async () => {
    const page = await opened({ width: 900, height: 1000 }, "screen");
    expect(await page.title()).toMatch(/^Day plan/);
    expect(await page.locator("script").count()).toBe(0);
    await picture(page, "plan-page");
  });

  test.each(["A4", "Letter"] as const)(
    "fits the width of %s, days and cautions its height",
    async (sheet) => {
      const page = await opened(SHEETS[sheet], "print");
      expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(
        SHEETS[sheet].width,
      );
      const box = await page.locator(".words").first().boundingBox();
      expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(SHEETS[sheet].height);
      await picture(page, `plan-page-${sheet}`);
    },
  );

  test.each(["A4", "Letter"] as const)("fits the width of %s with several cohorts", async (sheet) => {
    const page = await opened(SHEETS[sheet], "print", several);
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(
      SHEETS[sheet].width,
    );
    await picture(page, `plan-page-several-${sheet}`);
  });

  test.each([320, 900])("is accessible and does not run out of a screen of %i pixels", async (width) => {
    const page = await opened({ width, height: 900 }, "screen");
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(width);
    // The page allows no scripts; axe is put in from outside, past its policy.
    await page.evaluate(AXE);
    const results: AxeResults = await page.evaluate("axe.run()");
    expect(results.violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
  });
});
