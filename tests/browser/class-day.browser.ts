import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { bestOf, clockText, releaseOf, reasonsOf, verdictOf } from "../../notebooks/page/class-wording.ts";
import { dateOf, percent } from "../../notebooks/page/wording.ts";
import { longDate } from "../../src/plot/index.ts";
import { startRows, stageWindowRows } from "../../src/plot/index.ts";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { releaseHours } from "../../src/rearing/release/release-hours.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import {
  FROM,
  WANTED,
  ZONE,
  hourlyWeek,
  porchDays,
  porchForecast,
  porchPlan,
  roomPlan,
} from "../plot/class-day.ts";
import { type Look, type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, findings, keyboardOf, round, timeOf } from "./notebook-page.ts";

describe.skipIf(!browserAtHand())("notebooks/class-day.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;
  const plan = porchPlan();
  const rows = startRows(plan);
  const on = plan.best?.on ?? "";

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "class-day");
  });
  afterEach(async () => {
    const others = browser.contexts().filter((context) => context !== notebook.page.context());
    await Promise.all(others.map((context) => context.close()));
  });
  afterAll(() => browser.close());

  const fresh = (look?: Look): Promise<OpenNotebook> => openNotebook(browser, "class-day", look);
  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();

  test("opens from disk without a request and without a complaint", async () => {
    await picture(notebook.page, "class-day");
    expect(notebook.requests).toEqual([]);
    expect(notebook.complaints).toEqual([]);
  });

  test("says the cautions before any choice, the law first", async () => {
    const said = await text(notebook.page);
    const places = cautionsFor(danausPlexippus).map(({ text }) => said.indexOf(text));
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(Math.max(...places)).toBeLessThan(said.indexOf("What is wanted"));
  });

  test("gives the library's answer, in the page and to those who hear it", async () => {
    expect(await answer(notebook.page)).toBe(bestOf(plan, "C"));
    expect(await notebook.page.getByRole("status").innerText()).toBe(bestOf(plan, "C"));
  });

  test("draws the library's chances and leaves", async () => {
    const { page } = notebook;
    const chances = rows.map(({ chance }) => (chance ?? NaN) * 100);
    expect(round(await drawn(page, "chance", "y2", "y"))).toEqual(round(chances));
    const eaten = (porchDays(on).foliage[0]?.days ?? []).filter(({ most }) => most > 0);
    expect(round(await drawn(page, "leaves", "y2", "y"))).toEqual(round(eaten.map((day) => day.expected)));
    expect(round(await drawn(page, "leaves-most", "cy", "y"))).toEqual(round(eaten.map((day) => day.most)));
  });

  test("shows the library's starts, windows, conflicts and hours in its tables", async () => {
    const { page } = notebook;
    const starts = await cellsOf(page, "The ten best starts");
    expect(starts.map((cells) => cells[1])).toEqual(
      plan.ranked.slice(0, 10).map(({ odds }) => percent(odds?.chance ?? NaN)),
    );
    const dates = porchForecast(on);
    expect(await cellsOf(page, "When each stage begins")).toEqual(
      stageWindowRows(dates).map(({ name, early, expected, late }) => [
        name,
        ...[early, expected, late].map(dateOf),
      ]),
    );
    const { conflicts } = porchDays(on);
    expect(conflicts.map(({ code }) => code)).toContain("nobody-there");
    for (const { parts } of conflicts) {
      const words = parts.map((part) => (typeof part === "string" ? part : longDate(part.day)));
      expect(await text(page)).toContain(words.join(""));
    }
    const { emergences } = releaseHours(dates, hourlyWeek, {
      lifeCycle: danausPlexippus,
      place: { latitude: 40.7, longitude: -74 },
    });
    const expected = emergences.find(({ which }) => which === "expected");
    if (expected === undefined) throw new Error("there is an expected animal");
    expect(await text(page)).toContain(releaseOf(expected));
    const hours = await cellsOf(page, "The hours that are not dark");
    const { best } = expected;
    if (best === null) throw new Error("the invented week has an hour that fits");
    expect(hours).toContainEqual([clockText(best.from), verdictOf(best), reasonsOf(best)]);
    await page.getByLabel("Show in").selectOption("°F");
    await expect
      .poll(async () => (await cellsOf(page, "The hours that are not dark")).flat().join(" "))
      .toMatch(/The air has [\d.]+ °F.*The wind blows at [\d.]+ mph/);
    await page.getByLabel("Show in").selectOption("°C");
    await expect.poll(() => cellsOf(page, "The hours that are not dark")).toEqual(hours);
  });

  test("counts the nearest number that it takes, and shows it, where one beyond the ends is typed", async () => {
    const { page } = await fresh();
    const eggs = page
      .locator("input[type=number]")
      .and(page.getByLabel("Eggs, laid on the day of the start"));
    const most = Number(await eggs.getAttribute("max"));
    for (const [typed, counted] of [
      ["-5", 1],
      ["99999", most],
      ["", most],
    ] as const) {
      await eggs.fill(typed);
      await eggs.blur();
      await expect.poll(() => eggs.inputValue(), { message: typed }).toBe(String(counted));
      await expect.poll(() => answer(page), { message: typed }).toBe(bestOf(porchPlan(counted), "C"));
    }
  });

  test("answers every choice made by keyboard", async () => {
    const { page, complaints, requests } = await fresh();
    const changes = keyboardOf(page);
    const eggs = "Eggs, laid on the day of the start";
    await changes(eggs, ".notice", "ArrowLeft");
    await expect.poll(() => answer(page)).toBe(bestOf(porchPlan(11), "C"));
    await changes("Aim at", ".notice", "ArrowDown");
    await changes("Chosen start", "main p", "ArrowRight");
    await changes("Look at the days around", "tbody", "ArrowRight");
    await changes("For so many days", "main li", "Home");
    await changes("Leaves at hand", "main p", "End");
    await changes("Cages", "main li", "Home");
    await changes("For the animal that is", "main p", "ArrowDown");
    await changes("Wanted day", ".notice", "0", "7", "0", "2", "2", "0", "1", "5");
    await changes("Eggs can be had from", ".notice, figure", "0", "5", "2", "5", "2", "0", "1", "5");
    await changes("To be seen", ".notice", "ArrowDown");
    await changes("Where they are kept", ".notice", "ArrowDown");
    await changes("Show in", "figure", "ArrowDown");
    expect(await page.locator("figure").first().innerText()).toContain("°F");
    await picture(page, "class-day-changed");
    expect([...requests, ...complaints]).toEqual([]);
  });

  test("compares rooms, and refuses heat that harms with the reason", async () => {
    const { page, complaints } = await fresh();
    await page.getByLabel("Where they are kept").focus();
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => answer(page)).toBe(bestOf(roomPlan(), "C"));
    const chances = startRows(roomPlan()).map(({ chance }) => (chance ?? NaN) * 100);
    expect(round(await drawn(page, "chance", "y2", "y"))).toEqual(round(chances));
    await picture(page, "class-day-room");
    const warmest = page.getByLabel("Room: to, °C").and(page.locator("input[type=range]"));
    await warmest.focus();
    await page.keyboard.press("End");
    const alert = page.getByRole("alert");
    await expect
      .poll(() => alert.innerText())
      .toMatch(/36 °C \(96.8 °F\); held heat above 29 °C \(84.2 °F\) is harmful.*York/);
    expect(await page.locator("figure svg").count()).toBeLessThan(3);
    expect(await findings(page)).toEqual([]);
    await picture(page, "class-day-heat");
    await page.keyboard.press("Home");
    await expect.poll(() => alert.innerText()).toContain("must run from the coolest to the warmest");
    expect(complaints).toEqual([]);
  });

  test("gives no release to a species that is never to be released", async () => {
    const { page, complaints } = await fresh();
    await page.getByLabel("Species").selectOption({ label: "codling moth, Cydia pomonella" });
    await expect.poll(() => text(page)).toContain("No hours are looked for.");
    expect(await text(page)).toContain("Keep every stage closed in, release none");
    expect(await cellsOf(page, "The hours that are not dark")).toEqual([]);
    expect(await text(page)).toContain("not known here");
    expect(complaints).toEqual([]);
  });

  test("says what is wrong with a day, and recovers", async () => {
    const { page, complaints } = await fresh();
    await page.getByLabel("Wanted day").fill(addDays(WANTED, -60));
    const alert = page.getByRole("alert");
    await expect.poll(() => alert.innerText()).toContain("must not come before");
    await page.getByLabel("Wanted day").fill("2027-07-02");
    await expect.poll(() => alert.innerText()).toContain("nor more than 400 days after");
    await page.getByLabel("Eggs can be had from").fill("2027-05-20");
    await expect.poll(() => answer(page)).toContain("2 July 2027");
    expect(await text(page)).toContain("No hour can be named");
    await page.getByLabel("Eggs can be had from").fill("");
    await expect.poll(() => alert.count()).toBe(1);
    await page.getByLabel("Eggs can be had from").fill("2015-05-20");
    await page.getByLabel("Wanted day").fill(WANTED);
    await expect.poll(() => answer(page)).toBe(bestOf(plan, "C"));
    expect(complaints).toEqual([]);
  });

  test("takes temperatures of one's own, pasted or picked, and says what is wrong with them", async () => {
    const { page, requests, complaints } = await fresh();
    const alert = page.getByRole("alert");
    const box = page.getByLabel("Or paste your temperatures here");
    await box.fill("date,min,max\n2014-06-01,16,banana");
    await expect.poll(() => alert.innerText()).toContain("banana");
    const start = "2012-01-01";
    const [min, max] = [0, 1].map((part) => Array.from({ length: 1096 }, (_, i) => 15 + 12 * part + (i % 4)));
    const lines = Array.from({ length: 1096 }, (_, i) => [addDays(start, i), min?.[i], max?.[i]].join(","));
    await box.fill(["date,min,max", ...lines].join("\n"));
    await page.getByLabel("Their unit").selectOption("°C");
    const own = startFor({
      lifeCycle: danausPlexippus,
      start: { stage: "egg", count: 12, age: "new" },
      day: WANTED,
      zone: ZONE,
      dates: { from: FROM, to: WANTED },
      temperatures: weatherEnsemble({
        observed: dailyTemperatures(FROM, [0], [0]),
        until: addDays(FROM, -1),
        past: dailyTemperatures(start, min ?? [], max ?? []),
        exclude: [2015],
        days: dayNumber(WANTED) - dayNumber(FROM) + 100,
      }),
    });
    await expect.poll(() => answer(page)).toBe(bestOf(own, "C"));
    await box.fill("");
    await page.getByLabel("Your temperatures (CSV)").setInputFiles({
      name: "own.csv",
      mimeType: "text/csv",
      buffer: Buffer.from(["date,min,max", "2015-05-20,15,26"].join("\n")),
    });
    await expect.poll(() => alert.count()).toBe(1);
    await page.getByLabel("Your temperatures (CSV)").setInputFiles([]);
    await expect.poll(() => answer(page)).toBe(bestOf(plan, "C"));
    expect([...requests, ...complaints]).toEqual([]);
  });

  test("follows the chosen start at once", async () => {
    const { page } = notebook;
    await page.getByLabel("Chosen start").focus();
    const times = [];
    for (let i = 0; i < 7; i++) times.push(await timeOf(page, "ArrowRight"));
    times.sort((a, b) => a - b);
    await page.getByLabel("Aim at").focus();
    const again = [];
    for (const key of ["ArrowDown", "ArrowDown", "ArrowUp"]) again.push(await timeOf(page, key));
    console.log(
      `a step of the chosen start takes ${times.map((time) => time.toFixed(0)).join(", ")} ms, ` +
        `a new plan ${again.map((time) => time.toFixed(0)).join(", ")} ms`,
    );
  });
});
