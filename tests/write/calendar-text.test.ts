import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { stageName } from "../../src/species/stage-names.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { calendarText } from "../../src/write/pages/calendar-text.ts";
import { dayLabel } from "../../src/write/layout/text-layout.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { expectPlainPage } from "./plain-text.ts";

const season = inventedDays("2025-01-01", 900);

describe("calendarText", () => {
  it.each(
    SPECIES.flatMap((lifeCycle) =>
      ["2025-03-20", "2025-06-08", "2025-10-01"].map((on) => ({ lifeCycle, on })),
    ),
  )("fits 80 columns and has every milestone: $lifeCycle.species found on $on", ({ lifeCycle, on }) => {
    const [first] = lifeCycle.stages;
    const stage = first?.stage ?? "egg";
    const result = inventedForecast({ lifeCycle, found: { stage, on }, temperatures: season });
    const text = calendarText(result, { cautions: cautionsFor(lifeCycle) });
    expectPlainPage(text);
    const [table = "", days = ""] = text.split("DAY BY DAY");
    for (const { stage: later, begins } of result.stages) {
      expect(table).toMatch(new RegExp(`^  ${stageName(later).replace(/[()]/g, "\\$&")} .*`, "m"));
      if (begins.expected === null) continue;
      const line = days
        .split("\n")
        .find((one) => one.includes(`${dayLabel(begins.expected?.slice(0, 10) ?? "")}  `));
      expect(line).toContain("EXPECTED");
    }
    expect(table.includes("pupa darkens")).toBe(result.signs.length > 0);
    for (const { title } of cautionsFor(lifeCycle)) expect(text.replace(/\s+/g, " ")).toContain(title);
  });

  it("shows every date of every window in the table", () => {
    const result = inventedForecast();
    const text = calendarText(result);
    for (const { begins } of [...result.stages, ...result.signs]) {
      const days = [begins.early, begins.expected, begins.late].map((one) =>
        dayLabel(one?.slice(0, 10) ?? ""),
      );
      expect(text).toContain(days.join("  "));
    }
    expect(text).toContain("12 eggs found on Mon 8 Jun 2026");
    expect(text).toContain("10 % are there by the early date, 50 % by the expected one");
  });

  it("says what may happen on each day from early to late", () => {
    const result = inventedForecast();
    const pupa = result.stages.find(({ stage }) => stage === "pupa")?.begins;
    const lines = calendarText(result).split("\n");
    const dayLine = (instant: string | null | undefined) =>
      lines.find(
        (line) => line.startsWith(`  ${dayLabel(instant?.slice(0, 10) ?? "")}  `) && !line.includes("pupa "),
      );
    expect(dayLine(pupa?.early)).toMatch(/may .*pupate/);
    expect(dayLine(pupa?.expected)).toMatch(/EXPECTED: .*pupate/);
    expect(dayLine(pupa?.late)).toMatch(/may .*pupate/);
  });

  it("says right under the dates why they are missing, and that later ones are not known", () => {
    const text = calendarText(inventedForecast({ temperatures: inventedDays("2026-05-01", 60) }));
    expectPlainPage(text);
    const [above = "", below = ""] = text.split("DAY BY DAY");
    expect(above).toContain("not known");
    expect(above.replace(/\s+/g, " ")).toContain("The temperatures end at 2026-06-30 00:00");
    expect(below).toContain("What comes later is not known.");
    expect(below).not.toContain("The temperatures end");
  });

  it("says that an animal never develops, with the highest temperature seen", () => {
    const text = calendarText(
      inventedForecast({ temperatures: dailyTemperatures("2026-06-07", [1, 2, 3], [8, 9.4, 7]) }),
    );
    expectPlainPage(text);
    expect(text.split("DAY BY DAY")[0]?.replace(/\s+/g, " ")).toContain(
      "No development: the highest temperature is 9.4 °C and the lower threshold 11.5 °C.",
    );
  });

  it("keeps an animal without a late date possible on every later day", () => {
    const text = calendarText(inventedForecast({ temperatures: inventedDays("2026-05-01", 55) }));
    const last = text.split("DAY BY DAY")[1]?.split("What comes later")[0]?.trimEnd().split("\n").at(-1);
    expect(last).toContain("may");
  });

  it("says the year where dates fall in two of them", () => {
    const text = calendarText(
      inventedForecast({ found: { stage: "egg", on: "2025-10-01" }, temperatures: season }),
    );
    expectPlainPage(text);
    expect(text).toMatch(/adult +\w{3} .\d \w{3} 2026/);
    expect(text).toMatch(/^ {2}\w{3} +\d+ \w{3} 2025 to \w{3} \d+ \w{3} 2026 {2}/m);
    expect(calendarText(inventedForecast())).not.toMatch(/adult .*2026/);
  });

  it("stays short where almost nothing develops", () => {
    const text = calendarText(inventedForecast({ temperatures: constantTemperature(11.51) }));
    expectPlainPage(text);
    expect(text.split("\n").length).toBeLessThan(400);
  });

  it("counts days in the zone of the place, not in that of the time given", () => {
    const text = calendarText(inventedForecast({ found: { stage: "egg", on: "2026-06-09T02:00Z" } }));
    expect(text).toContain("1 egg found on Mon 8 Jun 2026");
    expect(text).toMatch(/^ {2}Mon {2}8 Jun {2}found/m);
  });

  it.each([
    ["instar-3", 1, "1 larva in the third instar"],
    ["instar-5", 3, "3 larvae in the fifth instar"],
    ["prepupa", 2, "2 prepupae (hanging)"],
    ["pupa", 1, "1 pupa found"],
    ["egg", 1, "1 egg found"],
  ] as const)("names what was found: %s, %d", (stage, count, words) => {
    expect(calendarText(inventedForecast({ found: { stage, count, on: "2026-06-08" } }))).toContain(words);
  });
});
