import { describe, expect, it } from "vitest";
import { heatLimit } from "../../src/rearing/start/heat-limit.ts";
import { autumnCueOf, preLayingOf } from "../../src/rearing/season/season-limits.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { formatInstant } from "../../src/time/zone.ts";
import { published } from "../support/published.ts";

const figures = published("heat-limits");

describe("published limits of heat", () => {
  it.each(figures.heat)("$id: $celsius °C is $effect ($source)", ({ latinName, effect, celsius }) => {
    const limit = heatLimit(findSpecies(latinName));
    // Every temperature that was found harmful lies at the limit or above it.
    expect(limit.hottest).toBeLessThanOrEqual(celsius);
    if (effect === "lethal") expect(limit.lethal).toBe(celsius);
    const ask = (to: number) => () =>
      startFor({
        lifeCycle: findSpecies(latinName),
        start: { stage: "egg" },
        day: "2026-06-12",
        on: "2026-05-20",
        constant: { from: 20, to },
      });
    expect(ask(celsius + 0.1)).toThrow("York & Oberhauser 2002");
  });

  it("the limit is the lowest of them, and itself allowed", () => {
    const harmful = figures.heat.filter(({ effect }) => effect === "harmful").map(({ celsius }) => celsius);
    expect(heatLimit(findSpecies("monarch")).hottest).toBe(Math.min(...harmful));
  });

  it.each(SPECIES)("$species has one that is not above its lowest upper threshold or 30 °C", (lifeCycle) => {
    const uppers = lifeCycle.stages.flatMap(({ upper }) => upper?.value ?? []);
    expect(heatLimit(lifeCycle).hottest).toBeLessThanOrEqual(Math.min(30, ...uppers));
  });
});

describe("published time to the first eggs", () => {
  it.each(figures.laying)("$id: $what ($source)", ({ latinName, days: [least, most] }) => {
    const days = preLayingOf(findSpecies(latinName));
    expect(days?.value).toBe((least + most) / 2);
    expect(days?.source).toContain("Zalucki 1981");
  });

  it("is unknown for species without a source", () => {
    const known = new Set(figures.laying.map(({ latinName }) => latinName));
    for (const lifeCycle of SPECIES)
      expect(preLayingOf(lifeCycle) === null).toBe(!known.has(lifeCycle.latinName));
  });
});

describe("published ends of breeding", () => {
  it.each(figures.autumn)("$id: $when ($source)", ({ latinName, when }) => {
    expect(autumnCueOf(findSpecies(latinName))?.text).toContain(when);
  });

  it(`names the cues and that none is decisive (${figures.cues.source})`, () => {
    const text = autumnCueOf(findSpecies(figures.cues.latinName))?.text ?? "";
    for (const cue of figures.cues.cues) expect(text).toContain(cue);
    expect(text.includes("no single one of them did so")).toBe(!figures.cues.decisiveAlone);
  });
});

// The other way round than tests/published/development-times.test.ts: given the days that animals took, startFor
// should name the temperature that they were kept at. Tolerance: that of the row, in days, turned into degrees above
// the threshold, and half a day, because a plan is made for a whole day.
describe("published durations name their temperatures", () => {
  const rows = published("development-times").rows.flatMap((row) =>
    row.kind === "days" && row.temperature <= heatLimit(findSpecies(row.species)).hottest ? [row] : [],
  );

  it("there are some", () => expect(rows.length).toBeGreaterThanOrEqual(4));

  it.each(rows)("$id: $what, $value days ($source)", ({ species, stages, temperature, value, tolerance }) => {
    const lifeCycle = findSpecies(species);
    const [stage] = stages;
    const after = lifeCycle.stages.findIndex((one) => one.stage === stages.at(-1)) + 1;
    // Counted back from noon of the wanted day.
    const noon = Date.parse("2026-06-12T12:00:00Z");
    const plan = startFor({
      lifeCycle,
      start: { stage: stage ?? "egg", age: "new" },
      milestone: lifeCycle.stages[after]?.stage ?? "adult",
      day: "2026-06-12",
      on: formatInstant(noon - value * 86_400_000, null),
      constant: { from: 14, to: heatLimit(lifeCycle).hottest },
    });
    const above = temperature - Math.max(...lifeCycle.stages.map(({ lower }) => lower.value));
    expect(plan.best?.temperature).toBeDefined();
    const off = Math.abs((plan.best?.temperature ?? 0) - temperature);
    expect(off).toBeLessThanOrEqual((tolerance * above) / (1 - tolerance) + (0.5 / value) * above);
  });
});
