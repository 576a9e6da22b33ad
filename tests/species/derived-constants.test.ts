import { describe, expect, it } from "vitest";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { drosophilaMelanogaster } from "../../src/species/drosophila-melanogaster.ts";
import type { LifeCycle } from "../../src/species/life-cycle.ts";
import { pierisBrassicae } from "../../src/species/pieris-brassicae.ts";
import { pierisRapae } from "../../src/species/pieris-rapae.ts";
import { degreeDaysOf, needsOf, ratePerDay, variationOf } from "../support/constant-temperature.ts";
import { published } from "../support/published.ts";

// Constants that were worked out from other figures are worked out again here.

const constants = (lifeCycle: LifeCycle) => lifeCycle.stages.map(({ degreeDays }) => degreeDays.value);

describe("danaus-plexippus", () => {
  const zalucki = published("zalucki-1982");

  it("has running totals as quoted", () => {
    let total = 0;
    for (const { stage, printed } of zalucki.runningTotals) {
      total += degreeDaysOf(needsOf(danausPlexippus, [stage]));
      expect(total.toFixed(1), stage).toBe(Number(printed).toFixed(1));
    }
  });

  it("comes to 352, from memory, at the adult", () => {
    expect(degreeDaysOf(danausPlexippus.stages)).toBeCloseTo(352, 9);
  });

  it("has the spread of the field table", () => {
    for (const { stage, mean, sd, cv } of zalucki.field) {
      const [needs] = needsOf(danausPlexippus, [stage]);
      expect(needs?.cv.value, stage).toBeCloseTo(sd / mean, 12);
      expect(Math.abs((needs?.cv.value ?? 0) - cv), stage).toBeLessThanOrEqual(zalucki.cvTolerance);
    }
  });

  it("says the right spread from egg to adult beside its stage correlation", () => {
    const { value, source } = danausPlexippus.stageCorrelation;
    expect(source).toContain(`${(100 * variationOf(danausPlexippus.stages, value)).toFixed(1)} %`);
  });
});

describe("the time that a hanging larva takes, as the source text says", () => {
  it.each([
    [danausPlexippus, 22],
    [danausPlexippus, 25],
    [danausPlexippus, 30],
    [pierisRapae, 19],
    [pierisBrassicae, 20],
  ])("$species", (lifeCycle, temperature) => {
    const last = lifeCycle.stages.at(-2);
    if (!last || !lifeCycle.hang) throw new Error("it hangs");
    const days = (lifeCycle.hang.value * last.degreeDays.value) / ratePerDay(last, temperature);
    expect(lifeCycle.hang.source).toContain(`${days.toFixed(2)} d at ${temperature} °C`);
  });
});

describe("pieris-rapae", () => {
  it("is the whole-life sum split by stage days", () => {
    // Instars 4.5, 3.0, 3.3, 4.1, 7.8 d at 19 °C, summer pupa about 11 d: Capinera, UF/IFAS (copy read).
    const base = 10;
    const instars = [4.5, 3.0, 3.3, 4.1, 7.8].map((days) => days * (19 - base));
    const pupa = 11 * (19 - base);
    // Egg to pupa: David & Gardiner 1962, second-hand.
    const raw = [(pupa * 68.6) / 161, ...instars, pupa];
    // Godin & Boivin 1998, second-hand.
    const factor = 319.7 / raw.reduce((sum, value) => sum + value, 0);
    expect(constants(pierisRapae)).toEqual(raw.map((value) => Number((value * factor).toFixed(1))));
    expect(degreeDaysOf(pierisRapae.stages)).toBeCloseTo(319.7, 9);
  });
});

describe("drosophila-melanogaster", () => {
  it("is 142 degree-days in shares from memory", () => {
    expect(constants(drosophilaMelanogaster)).toEqual(
      [0.1, 0.43, 0.47].map((share) => Number((142 * share).toFixed(1))),
    );
    expect(degreeDaysOf(drosophilaMelanogaster.stages)).toBeCloseTo(142, 9);
  });
});
