import { describe, expect, it } from "vitest";
import { learn } from "../../src/forecast/learning/learn.ts";
import { lastStageBegan } from "../../src/forecast/question/learned.ts";
import { type PlanCohort } from "../../src/rearing/plan/plan-cohort.ts";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import type { DayPlan } from "../../src/rearing/plan/day-plan-result.ts";
import type { PlanOptions } from "../../src/rearing/plan/plan-options.ts";
import { type PlanTask, TASK_CODES, type TaskCode } from "../../src/rearing/plan/plan-task.ts";
import { logEntry } from "../../src/cohort/log.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const monarchs = (name: string, change: Parameters<typeof inventedForecast>[0] = {}): PlanCohort => ({
  name,
  lifeCycle: danausPlexippus,
  forecast: inventedForecast(change),
});

const porch = monarchs("porch");
const plan = (options: PlanOptions = {}, ...cohorts: PlanCohort[]): DayPlan =>
  dayPlan(cohorts.length > 0 ? cohorts : [porch], options);

const tasksOf = (made: DayPlan, code: TaskCode): { day: string; task: PlanTask }[] =>
  made.days.flatMap(({ day, tasks }) =>
    tasks.filter((task) => task.code === code).map((task) => ({ day, task })),
  );
const daysOf = (made: DayPlan, code: TaskCode): string[] => tasksOf(made, code).map(({ day }) => day);
const dayOf = (instant: string | null | undefined): string => instant?.slice(0, 10) ?? "";
const windowOf = (stage: string) =>
  porch.forecast.stages.find((one) => one.stage === stage)?.begins ?? {
    early: null,
    expected: null,
    late: null,
  };

describe("dayPlan", () => {
  const made = plan();

  it("has every civil day from the find to the day after the last adult", () => {
    expect(made.from).toBe("2026-06-08");
    made.days.forEach(({ day }, i) => expect(day).toBe(addDays(made.from, i)));
    expect(made.days.at(-1)?.day).toBe(made.to);
    expect(made.to > dayOf(windowOf("adult").late)).toBe(true);
  });

  it("is plain data", () => {
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
  });

  it("gives the same twice", () => {
    expect(plan()).toEqual(made);
  });

  it("has all animals in some stage on every day", () => {
    for (const { cohorts } of made.days)
      for (const { stages } of cohorts) {
        expect(stages.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(stages.reduce((sum, { animals }) => sum + animals, 0)).toBeCloseTo(12, 8);
      }
  });

  it("watches for hatching and emergence from the early to the late day at least", () => {
    for (const [code, stage] of [
      ["watch-hatch", "instar-1"],
      ["watch-emergence", "adult"],
    ] as const) {
      const { early, expected, late } = windowOf(stage);
      for (const instant of [early, expected, late]) expect(daysOf(made, code)).toContain(dayOf(instant));
    }
    const emerging = tasksOf(made, "watch-emergence").reduce((sum, { task }) => sum + (task.animals ?? 0), 0);
    expect(emerging).toBeGreaterThan(11);
    expect(emerging).toBeLessThanOrEqual(12);
  });

  it("keeps the order of the day", () => {
    for (const { tasks } of made.days) {
      const places = tasks.map(({ code }) => TASK_CODES.indexOf(code));
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it("says once what each of its tasks means", () => {
    const used = new Set(made.days.flatMap(({ tasks }) => tasks.map(({ code }) => code)));
    expect(new Set(made.instructions.map(({ code }) => code))).toEqual(used);
  });

  it("releases on the day after adults may emerge, and points to law and weather", () => {
    expect(daysOf(made, "release")).toEqual(daysOf(made, "wings-drying").map((day) => addDays(day, 1)));
    const text = made.instructions.find(({ code }) => code === "release")?.text;
    expect(text).toMatch(/law/);
    expect(text).toMatch(/release hours/);
  });

  it("moves pupae once: the last is a day old, the first not dark", () => {
    const [day, ...more] = daysOf(made, "move-pupae");
    expect(more).toEqual([]);
    expect((day ?? "") > addDays(dayOf(windowOf("pupa").late), 1)).toBe(true);
    expect((day ?? "") < dayOf(porch.forecast.signs[0]?.begins.early)).toBe(true);
  });

  it("cleans while there are larvae, and no day twice", () => {
    const days = daysOf(made, "clean");
    expect(new Set(days).size).toBe(days.length);
    expect(days.length).toBeGreaterThan(8);
    expect((days.at(-1) ?? "") <= addDays(dayOf(windowOf("pupa").late), 1)).toBe(true);
    expect(daysOf(plan({ cleanEvery: 1 }), "clean").length).toBeGreaterThan(days.length);
  });

  it("cleans no cage of eggs: first so many days after the first hatchlings, whoever is away", () => {
    const eggs = monarchs("eggs", { found: { stage: "egg", on: "2026-06-08", count: 12, age: "new" } });
    const fresh = plan({}, eggs);
    const hatchling = fresh.days.find(({ cohorts }) =>
      cohorts[0]?.stages.some(({ stage, animals }) => stage === "instar-1" && animals >= 0.5),
    );
    const first = hatchling?.day ?? "";
    expect(first > fresh.from).toBe(true);
    const { day, task } = tasksOf(fresh, "clean")[0] ?? {};
    expect(task?.movedFrom ?? day).toBe(addDays(first, 2));
    expect(daysOf(plan({ cleanEvery: 1 }, eggs), "clean")[0]).toBe(addDays(first, 1));
    for (const cleanEvery of [1, 2, 3])
      for (const gone of [0, 1, 2, 3]) {
        const away = [addDays(first, gone), addDays(first, gone + 1)];
        expect((daysOf(plan({ away, cleanEvery }, eggs), "clean")[0] ?? "") > first).toBe(true);
      }
    const larvae = monarchs("larvae", { found: { stage: "instar-3", on: "2026-06-08", count: 3 } });
    expect(daysOf(plan({}, larvae), "clean")[0]).toBe("2026-06-08");
  });

  it("cleans on no quiet day, where a day beside it is not quiet", () => {
    const quiet = new Map(made.days.map(({ day, cohorts }) => [day, cohorts[0]?.quiet === true]));
    for (const { day, task } of tasksOf(made, "clean")) {
      const due = task.movedFrom ?? day;
      if (task.movedFrom !== null) expect(quiet.get(day)).toBe(false);
      else if (quiet.get(due))
        expect(made.conflicts.map(({ code, day: on }) => [code, on])).toContainEqual(["disturbed-rest", day]);
    }
  });

  it("says of animals alike that all rest at once, and cleans on other days", () => {
    const lifeCycle = {
      ...danausPlexippus,
      stages: danausPlexippus.stages.map((one) => ({ ...one, cv: { ...one.cv, value: 0.002 } })),
    };
    const forecast = inventedForecast({
      lifeCycle,
      found: { stage: "egg", on: "2026-06-08T08:00", count: 12, age: "new" },
    });
    const alike = plan({}, { name: "alike", lifeCycle, forecast });
    const days = alike.days.map(({ cohorts }) => cohorts[0]);
    expect(Math.max(...days.map((one) => one?.rest.share ?? 0))).toBe(1);
    expect(days.filter((one) => one?.quiet).length).toBeGreaterThan(5);
    expect(tasksOf(alike, "clean").filter(({ task }) => task.movedFrom !== null).length).toBeGreaterThan(0);
  });

  it("starts with the earliest cohort and counts each from its own find", () => {
    const two = plan(
      {},
      porch,
      monarchs("late", { found: { stage: "instar-3", on: "2026-06-15", count: 3 } }),
    );
    expect(two.cohorts.map(({ name }) => name)).toEqual(["late", "porch"]);
    expect(two.days[0]?.cohorts.map(({ cohort }) => cohort)).toEqual(["porch"]);
    expect(two.days[7]?.cohorts.map(({ cohort }) => cohort)).toEqual(["late", "porch"]);
  });
});

describe("animals found in the middle of a stage", () => {
  const steady = (stage: "instar-3" | "pupa", age: "new" | { from: number; to: number }): DayPlan => {
    const found = { stage, on: "2026-06-08T08:00", count: 10, age };
    const room = inventedForecast({ found, temperatures: constantTemperature(24) });
    return plan({}, { name: "shelf", lifeCycle: danausPlexippus, forecast: room });
  };
  const firstRest = (made: DayPlan) => made.days[0]?.cohorts[0]?.rest;

  it("leaves larvae alone that were found just before their molt", () => {
    expect(firstRest(steady("instar-3", { from: 0.85, to: 0.95 }))?.molting).toBeGreaterThan(9);
    expect(firstRest(steady("instar-3", "new"))?.molting).toBe(0);
  });

  it("leaves pupae alone that were found fresh, and no others", () => {
    const fresh = steady("pupa", "new");
    expect(firstRest(fresh)?.freshPupae).toBeCloseTo(10, 9);
    expect(daysOf(fresh, "do-not-disturb")).toEqual(["2026-06-08", "2026-06-09"]);
    expect(firstRest(steady("pupa", { from: 0.5, to: 0.6 }))?.freshPupae).toBe(0);
  });
});

describe("one animal alone", () => {
  const found = { stage: "egg", on: "2026-06-08", count: 1 } as const;
  const one = monarchs("alone", { found, temperatures: constantTemperature(22) });
  const alone = plan({}, one);
  const told = (day: string) =>
    tasksOf(alone, "do-not-disturb").find((task) => task.day === day)?.task.message;

  it("is left alone while it may molt, hang or be a fresh pupa, though no day is likelier than not", () => {
    const rests = alone.days.map(({ cohorts }) => cohorts[0]?.rest.share ?? 0);
    expect(Math.max(...rests)).toBeLessThan(0.5);
    expect(told("2026-06-15")).toBe("Do not disturb: it may be molting.");
    expect(told("2026-06-28")).toBe("Do not disturb: it may be hanging or a fresh pupa.");
    expect(told("2026-06-09")).toBeUndefined();
    expect(told("2026-07-06")).toBeUndefined();
  });

  it("is cleaned around on those days", () => {
    const resting = new Set(daysOf(alone, "do-not-disturb"));
    const cleaned = tasksOf(alone, "clean").filter(({ day }) => resting.has(day));
    expect(cleaned).not.toEqual([]);
    for (const { task } of cleaned) expect(task.message).toMatch(/do not touch it/);
  });

  it("is told of as one where no better day is beside", () => {
    const away = alone.days.flatMap(({ day, cohorts }) => (cohorts[0]?.quiet ? [] : [day]));
    const { conflicts } = plan({ away }, one);
    const disturbed = conflicts.filter(({ code }) => code === "disturbed-rest");
    expect(disturbed).not.toEqual([]);
    for (const { message } of disturbed)
      expect(message).toMatch(/it may rest \(with a chance of up to \d+ %\)/);
  });
});

it("has each day in its order: all day, morning, midday, evening", () => {
  const parts = ["all day", "morning", "midday", "evening"];
  for (const { tasks } of plan().days) {
    const places = tasks.map(({ part }) => parts.indexOf(part));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  }
});

it("says of a cohort that comes after its last day that it is not in it", () => {
  const later = monarchs("later", {
    found: { stage: "egg", on: "2027-09-01", count: 2 },
    temperatures: constantTemperature(24),
  });
  const made = plan({}, porch, later);
  expect(made.notes.find(({ code }) => code === "plan-stops")?.message).toContain("cohort later");
});

it("counts leaves of the cohort's own stages in its notes, whatever else the needs hold", () => {
  const one = { value: 1, mark: "common practice, no source", source: "own number" } as const;
  const instars = ["instar-1", "instar-2", "instar-3", "instar-4", "instar-5"] as const;
  const leaves = { larva: { ...one, value: 5 }, ...Object.fromEntries(instars.map((stage) => [stage, one])) };
  const made = plan({ needs: [{ latinName: "Danaus plexippus", food: "milkweed", leaves }] });
  const text = made.notes.map(({ message }) => message).join(" ");
  expect(text).toContain("eat 5 leaves of milkweed in all (common practice");
});

describe("what does not fit together", () => {
  const codes = (made: DayPlan) => made.conflicts.map(({ code }) => code);

  it("nobody there when adults come: the days, and how many", () => {
    const made = plan({
      away: [dayOf(windowOf("adult").expected), addDays(dayOf(windowOf("adult").expected), 1)],
    });
    const found = made.conflicts.filter(({ code }) => code === "nobody-there");
    expect(found[0]?.days).toHaveLength(2);
    expect(found[0]?.message).toMatch(/about \d+ of its adults may emerge/);
    expect(found.map(({ message }) => message).join(" ")).toContain("released");
    expect(codes(plan({ away: ["2026-12-24"] }))).not.toContain("nobody-there");
  });

  it("nobody there to feed: how much to put out before", () => {
    const made = plan({ away: ["2026-06-23"] });
    const { leaves } = tasksOf(made, "fresh-foliage").find(({ day }) => day === "2026-06-23")?.task ?? {};
    const message = made.conflicts.find(({ code }) => code === "nobody-there")?.message;
    expect(message).toContain(`up to ${Math.ceil(leaves?.most ?? 0)} leaves`);
  });

  it("work moves away from days on which nobody is there", () => {
    const [first = ""] = daysOf(plan(), "clean").slice(3);
    const made = plan({ away: [first] });
    expect(tasksOf(made, "clean").find(({ task }) => task.movedFrom === first)?.day).toBeDefined();
  });

  it("a crowded cage is split before or when it is crowded, with the reason", () => {
    const made = plan();
    const crowded = made.conflicts.find(({ code }) => code === "cage-crowded");
    expect(crowded?.message).toMatch(/12 larvae in 1 cage, and the limit is 10 to a cage\. Disease/);
    expect(tasksOf(made, "split-cage")).toHaveLength(1);
    expect(tasksOf(made, "split-cage")[0]?.task.message).toContain("2 cages are needed");
    expect(codes(plan({}, { ...porch, cages: 2 }))).not.toContain("cage-crowded");
    expect(codes(plan({ perCage: 12 }))).not.toContain("cage-crowded");
    expect(plan({ perCage: 5 }).cageLimit).toMatchObject({ larvae: 5, source: "own number" });
  });

  it("two cohorts at their busiest on one day", () => {
    const made = plan({}, porch, { ...porch, name: "shelf" });
    const together = made.conflicts.filter(({ code }) => code === "peaks-together");
    expect(together.map(({ cohorts }) => cohorts)).toEqual([
      ["porch", "shelf"],
      ["porch", "shelf"],
    ]);
    expect(codes(plan())).not.toContain("peaks-together");
  });

  it("no day to move pupae", () => {
    const wide = monarchs("wide", {
      found: { stage: "instar-3", on: "2026-06-08" },
      shares: [0.001, 0.5, 0.999],
    });
    const all = Array.from({ length: 60 }, (_, i) => addDays("2026-06-08", i));
    expect(codes(plan({ away: all }, wide))).toContain("no-day-to-move-pupae");
  });

  it("dates that the temperatures do not reach", () => {
    const made = plan({}, monarchs("short", { temperatures: inventedDays("2026-05-01", 55) }));
    const unknown = made.conflicts.find(({ code }) => code === "dates-unknown");
    expect(unknown?.message).toContain("The temperatures end at 2026-06-25 00:00");
    expect(made.to <= "2026-06-25").toBe(true);
    const cold = plan({}, monarchs("cold", { temperatures: constantTemperature(5) }));
    expect(cold.days).toHaveLength(1);
    expect(cold.conflicts[0]?.message).toContain("No development");
  });

  it("a plan that would never end stops, and says so", () => {
    const made = plan({}, monarchs("slow", { temperatures: constantTemperature(11.7) }));
    expect(made.days.length).toBeLessThanOrEqual(400);
    expect(made.notes.map(({ code }) => code)).toContain("plan-stops");
  });
});

describe.each(SPECIES.map((lifeCycle) => ({ id: lifeCycle.species, lifeCycle })))(
  "a plan for $id",
  ({ lifeCycle }) => {
    const [first] = lifeCycle.stages;
    const forecast = inventedForecast({
      lifeCycle,
      found: { stage: first?.stage ?? "egg", on: "2025-05-20", count: 5 },
      temperatures: inventedDays("2025-01-01", 600),
    });
    const made = dayPlan([{ name: "A", lifeCycle, forecast }]);

    it("lets go only what may be let go", () => {
      const never = lifeCycle.handling.includes("never-release");
      const foreign = lifeCycle.handling.includes("not-native-in-places");
      expect(daysOf(made, "release").length > 0).toBe(!never && !foreign);
      expect(daysOf(made, "freeze").length > 0).toBe(never);
      expect(daysOf(made, "keep-in").length > 0).toBe(foreign && !never);
      if (never) expect(tasksOf(made, "freeze")[0]?.task.message).toMatch(/Freeze, never release/);
    });

    it("carries the cautions, the law first, and the forecast's notes", () => {
      expect(made.cautions[0]?.id).toBe("local-law");
      expect(made.cautions.some(({ id }) => id === "sap-and-eyes")).toBe(
        lifeCycle.handling.includes("harmful-sap"),
      );
      for (const note of forecast.notes) expect(made.notes).toContainEqual(note);
    });

    it("warns of molts that are in no task where the larva is one stage", () => {
      const warned = made.notes.some(({ code }) => code === "molts-not-dated");
      expect(warned).toBe(lifeCycle.stages.some(({ stage }) => stage === "larva"));
    });

    it("names amounts of food only where a need is known", () => {
      const fed = tasksOf(made, "fresh-foliage");
      expect(fed.length).toBeGreaterThan(3);
      const known = lifeCycle.latinName === "Danaus plexippus";
      for (const { task } of fed) expect(task.leaves !== null).toBe(known);
      expect(made.foliage).toHaveLength(known ? 1 : 0);
    });
  },
);

describe("after a log", () => {
  const input = {
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2026-06-08", count: 12 },
    temperatures: inventedDays("2026-05-01", 200),
    zone: "America/New_York",
  } as const;
  const learned = learn(input, [logEntry({ stage: "instar-3", on: "2026-06-18", count: 8 })]);
  const cohort = monarchs("porch", { learned });

  it("starts with the stage seen, once it is said since when", () => {
    const error = refusalOf(() => dayPlan([cohort]));
    expect(error).toMatchObject({ code: "invalid-found", path: ["cohorts", 0, "since"] });
    const made = dayPlan([{ ...cohort, since: "2026-06-18" }]);
    expect(made.from).toBe("2026-06-18");
    expect(made.days[0]?.cohorts[0]?.stages[0]?.stage).toBe("instar-3");
  });

  it("takes a time with an offset for the moment that it is", () => {
    const eatenBy = (since: string) => dayPlan([{ ...cohort, since }]).foliage[0]?.days[0];
    const wall = eatenBy("2026-06-18T09:00");
    for (const same of ["2026-06-18T09:00:00-04:00", "2026-06-18T09:00-04:00", "2026-06-18T13:00Z"])
      expect(eatenBy(same)).toEqual(wall);
    expect(eatenBy("2026-06-18T13:00")).not.toEqual(wall);
    // Ten in the evening in New York is the next day in UTC.
    expect(dayPlan([{ ...cohort, since: "2026-06-19T02:00:00Z" }]).from).toBe("2026-06-18");
  });

  it.each(["2026-06-31", "noon", 5, null, {}])("refuses the since %j by its place", (since) => {
    const error = refusalOf(() => dayPlan([{ ...cohort, since: since as never }]));
    expect(error.path).toEqual(["cohorts", 0, "since"]);
  });

  it("is told since when by what was learned: the middle of the animals seen, in any order", () => {
    const seen = (on: string, count: number) => logEntry({ stage: "instar-3", on: `${on}T18:00`, count });
    const began = (...log: ReturnType<typeof seen>[]) => lastStageBegan(learn(input, log));
    expect(began()).toBeNull();
    // Between two looks a day apart the middle is half a day back.
    expect(began(seen("2026-06-18", 8))).toBe("2026-06-18T06:00:00-04:00");
    expect(began(seen("2026-06-17", 1), seen("2026-06-18", 7), seen("2026-06-19", 2))).toBe(
      "2026-06-18T06:00:00-04:00",
    );
    expect(began(seen("2026-06-19", 2), seen("2026-06-17", 7), seen("2026-06-18", 1))).toBe(
      "2026-06-17T06:00:00-04:00",
    );
    expect(refusalOf(() => Reflect.apply(lastStageBegan, null, [])).path).toEqual(["learned"]);
  });
});

describe("refusals", () => {
  it.each<[string, () => unknown, string]>([
    ["no cohort", () => dayPlan([]), "cohorts is empty"],
    ["two of one name", () => dayPlan([porch, porch]), 'cohorts.1.name is "porch"'],
    ["no name", () => dayPlan([{ ...porch, name: " " }]), "cohorts.0.name"],
    ["a name on two lines", () => dayPlan([{ ...porch, name: "a\nb" }]), "on one line"],
    ["a count of 0", () => dayPlan([{ ...porch, count: 0 }]), "cohorts.0.count is 0"],
    ["half a cage", () => dayPlan([{ ...porch, cages: 0.5 }]), "cohorts.0.cages is 0.5"],
    [
      "another species' forecast",
      () => dayPlan([{ ...porch, lifeCycle: findSpecies("pieris-rapae") }]),
      "it must be a forecast of the cohort's species, pieris-rapae",
    ],
    ["a day that is none", () => plan({ away: ["2026-02-30"] }), "away.0"],
    ["a stock below 0", () => plan({ supplies: [{ leaves: -1 }] }), "supplies.0.leaves is -1"],
    ["a stock of NaN", () => plan({ supplies: [{ leaves: NaN }] }), "supplies.0.leaves is NaN"],
    ["a food that nobody eats", () => plan({ supplies: [{ food: "oak", leaves: 1 }] }), '"milkweed"'],
    ["no leaves on a stem", () => plan({ leavesPerStem: 0 }), "leavesPerStem is 0"],
    ["no larvae in a cage", () => plan({ perCage: 0 }), "perCage is 0"],
    ["cleaning never", () => plan({ cleanEvery: 0 }), "cleanEvery is 0"],
  ])("%s", (_, call, says) => {
    expect(refusalOf(call).message).toContain(says);
  });
});
