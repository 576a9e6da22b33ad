import { describe, expect, it } from "vitest";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { planText } from "../../src/write/plan/plan-text.ts";
import { dayLabel } from "../../src/write/layout/text-layout.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { expectPlainPage } from "./plain-text.ts";

const porch = { name: "porch", lifeCycle: danausPlexippus, forecast: inventedForecast() };
const flat = (text: string): string => text.replace(/\s+/g, " ");

describe("planText", () => {
  it.each(SPECIES.map((lifeCycle) => ({ id: lifeCycle.species, lifeCycle })))(
    "fits 80 columns and has every day of $id",
    ({ lifeCycle }) => {
      const [first] = lifeCycle.stages;
      const forecast = inventedForecast({
        lifeCycle,
        found: { stage: first?.stage ?? "egg", on: "2025-09-20", count: 7 },
        temperatures: inventedDays("2025-01-01", 900),
      });
      const plan = dayPlan([
        { name: "a rather long name of a cohort on the upper shelf", lifeCycle, forecast },
      ]);
      const text = planText(plan);
      expectPlainPage(text);
      for (const { day, tasks } of plan.days)
        if (tasks.length > 0) expect(text).toContain(`  ${dayLabel(day)}  [ ]`);
      for (const { title } of plan.cautions) expect(flat(text)).toContain(title);
      expect(text.includes("Freeze, never release")).toBe(lifeCycle.handling.includes("never-release"));
    },
  );

  it("tells what does not fit together first, with days as people write them", () => {
    const text = planText(
      dayPlan([porch], { away: ["2026-07-06", "2026-07-07"], supplies: [{ leaves: 60 }] }),
    );
    expectPlainPage(text);
    const [above = "", below = ""] = text.split("DAY BY DAY");
    expect(flat(above)).toContain("! The milkweed runs out on Wed 24 Jun. 24 leaves in all are missing.");
    expect(flat(above)).toContain("Nobody is there on Mon 6 Jul and Tue 7 Jul for cohort porch");
    expect(below).toMatch(/Mon {2}6 Jul {2}nobody there\n {14}\[ \] Watch for emergence/);
    expect(text).not.toMatch(/\d{4}-\d{2}-\d{2}/);
  });

  it("writes every day that exists as people do, and leaves names that look like days as they are", () => {
    // Every second day, so that each is named.
    const days = Array.from({ length: 31 }, (_, i) => addDays("2026-06-02", 2 * i));
    const early = inventedForecast({ found: { stage: "egg", on: "2026-06-01", count: 12 } });
    for (const name of ["2014-02-29", "2014-06-30"]) {
      const text = flat(planText(dayPlan([{ ...porch, forecast: early, name }], { away: days })));
      const [above = ""] = text.split("DAY BY DAY");
      expect(above).toContain(`for cohort ${name}: `);
      expect(above).toContain("Tue 30 Jun");
      expect(above.replaceAll(name, "")).not.toMatch(/\d{4}-\d{2}-\d{2}/);
    }
  });

  it("names cohorts only where there are several, and for which a caution is", () => {
    expect(planText(dayPlan([porch], { perCage: 12 }))).not.toContain("porch");
    const white = findSpecies("pieris-rapae");
    const other = inventedForecast({ lifeCycle: white, found: { stage: "egg", on: "2026-06-10", count: 4 } });
    const text = planText(dayPlan([porch, { name: "shelf", lifeCycle: white, forecast: other }]));
    expectPlainPage(text);
    expect(text).toMatch(/\[ \] porch: /);
    expect(flat(text)).toContain("* Never release (shelf): ");
    expect(flat(text)).toContain("* Keep plant sap out of your eyes (porch): ");
  });

  it("tells one leaf and one stem as one, and spares what is left over", () => {
    const plan = dayPlan([porch], { supplies: [{ leaves: 1 }], leavesPerStem: 12 });
    const [food] = plan.foliage;
    if (food === undefined) throw new Error("monarchs eat");
    const few = { ...food, total: 0.4, margin: 0.7, withMargin: 1.1, stems: 1, leavesPerStem: 1 };
    const text = flat(planText({ ...plan, foliage: [few] }));
    expect(text).toContain(
      "Milkweed: less than 1 leaf in all. Have 2 (1 stem with 1 leaf), so that 1 is spare",
    );
    expect(text).toContain("1 leaf at hand or to come: it runs out on ");
    const some = { ...food, total: 10.2, margin: 2.2, withMargin: 12.4 };
    expect(flat(planText({ ...plan, foliage: [some] }))).toMatch(
      /about 11 leaves in all\. Have 13 \(.*\), so that 2 are spare/,
    );
  });

  it("puts idle weeks on one line", () => {
    const forecast = inventedForecast({
      temperatures: constantTemperature(12.5),
      found: { stage: "egg", on: "2026-06-08", age: "new" },
    });
    const text = planText(dayPlan([{ ...porch, forecast }]));
    expectPlainPage(text);
    expect(text).toMatch(/^ {2}Mon {2}8 Jun {2}to \w{3} \d+ \w{3}: nothing to do$/m);
  });
});
