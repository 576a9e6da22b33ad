import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, type Page, chromium } from "playwright-core";
import { BUILT } from "../../notebooks/build/build.ts";
import { CHROMIUM } from "./chromium.ts";

/** Where pictures of pages go, to be looked at after a run: named by the variable SCREENSHOTS, or nowhere. */
const { SCREENSHOTS } = process.env;

/** A picture of a whole page, where they are wanted; they take a third of the time of these tests. */
export async function picture(page: Page, name: string): Promise<void> {
  if (SCREENSHOTS === undefined) return;
  await page.screenshot({ path: join(SCREENSHOTS, `${name}.png`), fullPage: true });
}

/** A headless browser that asks nothing of the network on its own account. */
export function launch(): Promise<Browser> {
  if (SCREENSHOTS !== undefined) mkdirSync(SCREENSHOTS, { recursive: true });
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** An opened notebook, with everything it did that it should not. */
export interface OpenNotebook {
  readonly page: Page;
  /** Addresses that the page asked for outside itself; each was refused. */
  readonly requests: string[];
  /** Errors and warnings on the console, and errors that nobody caught. */
  readonly complaints: string[];
}

/** How to look at a notebook. */
export interface Look {
  readonly width?: number;
  readonly dark?: boolean;
}

/** Opens a built notebook from disk and waits until it has an answer. */
export async function openNotebook(browser: Browser, name: string, look: Look = {}): Promise<OpenNotebook> {
  const { width = 900, dark = false } = look;
  const context = await browser.newContext({
    viewport: { width, height: 1000 },
    colorScheme: dark ? "dark" : "light",
    locale: "en-US",
    timezoneId: "America/New_York",
  });
  const requests: string[] = [];
  const complaints: string[] = [];
  await context.route(/^(?!file:|data:|blob:)/, async (route) => {
    requests.push(route.request().url());
    await route.abort();
  });
  const page = await context.newPage();
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(pathToFileURL(join(BUILT, `${name}.html`)).href);
  await page.locator(".notice").first().waitFor();
  await page.locator("figure svg").nth(2).waitFor();
  return { page, requests, complaints };
}
