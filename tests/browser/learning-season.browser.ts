import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { learnedOf, outlookOf } from "../../notebooks/page/learning-wording.ts";
import { logEntry } from "../../src/cohort/log.ts";
import { outlookRows, updatedWindowRows } from "../../src/plot/index.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { outlookOn, slowLog, slowSeen } from "../plot/slow-season.ts";
import { type Look, type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { drawn, findings, round, timeOf } from "./notebook-page.ts";

const FOUND = "2013-06-05";
/** The day that the slider begins on. */
const OPENED = addDays(FOUND, 19);

describe.skipIf(!browserAtHand())("notebooks/learning-season.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;
  const first = outlookOn(FOUND);

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "learning-season");
    await workedOut(notebook.page);
  });
  // A page left open would go on working out its evenings beside the next test.
  afterEach(async () => {
    const others = browser.contexts().filter((context) => context !== notebook.page.context());
    await Promise.all(others.map((context) => context.close()));
  });
  afterAll(() => browser.close());

  const fresh = (look?: Look): Promise<OpenNotebook> => openNotebook(browser, "learning-season", look);
  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();

  test("opens from disk without a request and without a complaint", async () => {
    await picture(notebook.page, "learning-season");
    expect(notebook.requests).toEqual([]);
    expect(notebook.complaints).toEqual([]);
  });

  test("gives the library's answer, in the page and to those who hear it", async () => {
    const opened = outlookOn(OPENED);
    expect(await answer(notebook.page)).toBe(outlookOf(opened, first));
    expect(await notebook.page.getByRole("status").innerText()).toBe(outlookOf(opened, first));
    expect(await text(notebook.page)).toContain(learnedOf(opened.learned));
  });

  test("draws the library's windows, widths and beliefs", async () => {
    const { page } = notebook;
    const rows = updatedWindowRows(first.forecast, outlookOn(OPENED).forecast, {
      log: slowSeen,
      today: OPENED,
    });
    for (const [mark, at] of [
      ["first-expected", rows.map((row) => row.first.expected)],
      ["now-expected", rows.flatMap((row) => (row.now === null ? [] : [row.now.expected]))],
    ] as const) {
      const ticks = await drawn(page, mark, "x1", "x");
      expect(ticks).toHaveLength(at.length);
      // A tenth of a pixel of a month on 700 pixels is about six minutes.
      ticks.forEach((tick, i) =>
        expect(Math.abs(tick - Date.parse(`${at[i]?.slice(0, 19)}Z`))).toBeLessThan(6 * 60_000),
      );
    }
    expect(await page.locator(".seen > *").count()).toBe(rows.flatMap((row) => row.seen).length);
    expect(await page.locator(".later > *").count()).toBe(rows.flatMap((row) => row.later).length);

    const last = slowLog.at(-1)?.on ?? "";
    const marks = await Promise.all(
      ["with-log-day", "without-log-day", "paceLow", "paceMiddle", "paceHigh"].map((mark) =>
        drawn(page, mark, "cy", "y"),
      ),
    );
    // Each figure has a point for each evening; a few of them are worked out again here.
    for (const day of [FOUND, addDays(FOUND, 9), OPENED, last]) {
      const i = (Date.parse(day) - Date.parse(FOUND)) / 86_400_000;
      const [row] = outlookRows([outlookOn(day)]);
      expect(round(marks.map((values) => values[i] ?? NaN))).toEqual(
        round([
          row?.windowDays ?? NaN,
          row?.windowDaysWithoutLog ?? NaN,
          row?.paceLow ?? NaN,
          row?.paceMiddle ?? NaN,
          row?.paceHigh ?? NaN,
        ]),
      );
    }
    const evenings = (Date.parse(last) - Date.parse(FOUND)) / 86_400_000 + 1;
    for (const values of marks) expect(values.length).toBeGreaterThanOrEqual(evenings);
  });

  test("follows the slider, moved by keyboard, at once", async () => {
    const { page, requests, complaints } = notebook;
    await page.getByLabel("Today", { exact: true }).focus();
    const figure = page.locator("figure").first();
    const before = await figure.innerHTML();
    await page.keyboard.press("ArrowRight");
    const next = addDays(OPENED, 1);
    await expect.poll(() => answer(page)).toBe(outlookOf(outlookOn(next), first));
    await expect.poll(() => figure.innerHTML()).not.toBe(before);
    expect(await page.getByLabel("Today", { exact: true }).getAttribute("aria-valuetext")).toBe(
      "25 June 2013",
    );
    const times = [];
    for (let i = 0; i < 10; i++) times.push(await timeOf(page, "ArrowRight"));
    times.sort((a, b) => a - b);
    console.log(`a step of the slider takes ${times.map((time) => time.toFixed(0)).join(", ")} ms`);
    await page.keyboard.press("Home");
    await expect.poll(() => answer(page)).toBe(outlookOf(first, first));
    await page.keyboard.press("End");
    await expect.poll(() => answer(page)).toContain("July 2013");
    await picture(page, "learning-season-end");
    expect([...requests, ...complaints]).toEqual([]);
  });

  test("keeps a planted mistake aside and says why", async () => {
    const { page, complaints } = await fresh();
    expect(await text(page)).toContain(learnedOf(outlookOn(OPENED).learned));
    await page.getByLabel("Plant a pupa seen on the day before the find").press("Space");
    await page.getByLabel("Plant an adult seen a week after the find").press("Space");
    const planted = [
      logEntry({ stage: "pupa", on: addDays(FOUND, -1) }),
      logEntry({ stage: "adult", on: addDays(FOUND, 7) }),
    ];
    const { learned } = outlookOn(OPENED, [...slowLog, ...planted]);
    expect(learned.aside).toHaveLength(3);
    await expect.poll(() => text(page)).toContain(learnedOf(learned));
    for (const { reason } of learned.aside) expect(await text(page)).toContain(reason);
    // The dead larva is kept aside too, but has no mark.
    expect(await page.locator(".aside > *").count()).toBe(2);
    // What was learned of the pace stays as it was.
    expect(learned.pace).toEqual(outlookOn(OPENED).learned.pace);
    await picture(page, "learning-season-planted");
    expect(await findings(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test("answers its question when a choice is changed", async () => {
    const { page, complaints } = notebook;
    const ends = page.locator("main p", { hasText: "With cohorts that differ by" });
    expect(await ends.innerText()).toMatch(
      /^With cohorts that differ by 10 %, a pace of 1 lies outside the band/,
    );
    await page.getByLabel("Cohorts differ in pace by about").focus();
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => ends.innerText()).toMatch(/^With cohorts that differ by 5 %/);
    await workedOut(page);
    expect(await ends.innerText()).toMatch(/for good from \d+ (June|July) on, \d+ days after the find\.$/);
    expect(complaints).toEqual([]);
  });

  test("takes files of one's own, and says what is wrong with them", async () => {
    const { page, requests, complaints } = await fresh();
    const give = (label: string, lines: readonly string[]): Promise<void> =>
      page.getByLabel(label).setInputFiles({
        name: "own.csv",
        mimeType: "text/csv",
        buffer: Buffer.from(lines.join("\n")),
      });
    const alert = page.getByRole("alert");
    const daysOf = (from: string, count: number): string[] =>
      Array.from({ length: count }, (_, i) => `${addDays(from, i)},${15 + (i % 3)},${26 + (i % 4)}`);
    await give("Your temperatures (CSV)", ["date,min,max", ...daysOf("2013-05-01", 120)]);
    await page.getByLabel("Their unit").selectOption("°C");
    await expect.poll(() => alert.innerText()).toContain("past year");
    expect(await page.locator("figure").count()).toBe(0);
    await give("Your temperatures (CSV)", ["date,min,max", ...daysOf("2011-01-01", 1200)]);
    await expect.poll(() => alert.count()).toBe(0);
    await expect.poll(() => answer(page)).toContain("2013");
    expect(await text(page)).toContain("The log has taught nothing yet.");
    await give("Your log (CSV)", ["stage,seen on,count", "instar-1,2013-06-09,4", "instar-2,2013-06-13,4"]);
    await expect.poll(() => text(page)).toContain("Learned from 2 entries of the log.");
    await give("Your log (CSV)", ["stage,seen on", "butterfly egg cup,2013-06-12"]);
    await expect.poll(() => alert.innerText()).toContain("butterfly egg cup");
    await page.getByLabel("Your log (CSV)").setInputFiles([]);
    const box = page.getByLabel("Or paste your temperatures here");
    await box.fill("date,min,max\n2013-05-01,15,banana");
    await expect.poll(() => alert.innerText()).toContain("banana");
    await box.fill(["date,min,max", ...daysOf("2011-01-01", 1200)].join("\n").replaceAll(",15,", ",17,"));
    await expect.poll(() => alert.count()).toBe(0);
    await expect.poll(() => answer(page)).toContain("2013");
    await box.fill("");
    await page.getByLabel("Your temperatures (CSV)").setInputFiles([]);
    await expect.poll(() => answer(page)).toBe(outlookOf(outlookOn(OPENED), first));
    expect([...requests, ...complaints]).toEqual([]);
  });
});

/** Waits until every evening is worked out. */
async function workedOut(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector("progress")?.hidden === true, null, {
    timeout: 100_000,
  });
}
