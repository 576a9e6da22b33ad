import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { BUILT } from "../../notebooks/build/build.ts";
import { picture, launch } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const INDEX = pathToFileURL(join(BUILT, "index.html")).href;

describe.skipIf(!browserAtHand())("the index of the notebooks", () => {
  let browser: Browser;
  let page: Page;
  const complaints: string[] = [];

  beforeAll(async () => {
    browser = await launch();
    page = await browser.newPage({ viewport: { width: 900, height: 1000 } });
    page.on("console", (message) => complaints.push(message.text()));
    page.on("request", (request) => {
      if (!request.url().startsWith("file:") && !request.url().startsWith("data:"))
        complaints.push(request.url());
    });
    await page.goto(INDEX);
  });
  afterAll(() => browser.close());

  test("lists every notebook with its heading, its idea, what to know before and its minutes", async () => {
    expect(await page.title()).toBe("Moltline notebooks");
    const items = page.locator(".lessons > li");
    const links = await page
      .locator(".lessons a")
      .evaluateAll((all) => all.map((a) => a.getAttribute("href")));
    expect(links.length).toBeGreaterThanOrEqual(5);
    expect(links.slice(0, 2)).toEqual(["degree-day.html", "first-season.html"]);
    for (const link of links) expect(existsSync(join(BUILT, String(link)))).toBe(true);
    for (const item of await items.all())
      expect(await item.innerText()).toMatch(/\n.+\.\n+Know before: .+\. About \d+ minutes\.$/);
    expect(await page.locator("script").count()).toBe(0);
  });

  test("can be read by all and fits every screen and paper", async () => {
    const look = async (name: string): Promise<void> => {
      await picture(page, `index-${name}`);
      await page.evaluate(AXE);
      const { violations, passes } = await page.evaluate<AxeResults>("axe.run()");
      expect(passes.length).toBeGreaterThan(10);
      expect(violations.map(({ id, nodes }) => [name, id, nodes[0]?.html])).toEqual([]);
    };
    await look("light");
    await page.emulateMedia({ colorScheme: "dark" });
    await look("dark");
    await page.setViewportSize({ width: 320, height: 900 });
    await look("phone");
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(320);
    await page.emulateMedia({ colorScheme: "light", media: "print" });
    await page.setViewportSize({ width: 760, height: 1000 });
    await look("print");
    await page.emulateMedia({ media: "screen" });
    expect(complaints).toEqual([]);
  });

  test("leads by keyboard to a notebook, on to the next and back", async () => {
    const first = page.locator(".lessons a").first();
    const heading = await first.innerText();
    await first.focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/degree-day\.html$/);
    expect(await page.locator("h1").innerText()).toBe(heading);
    const next = page.getByRole("navigation", { name: "Next notebook" }).getByRole("link").first();
    await next.focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/first-season\.html$/);
    await page.getByRole("navigation", { name: "Notebooks", exact: true }).getByRole("link").focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/index\.html$/);
  });
});
