import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { compare } from "../../src/evaluate/hindsight/compare.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { refusalOf } from "../support/refusal.ts";

// At 21.5 °C a day has 10 degree-days over 11.5 °C, so that days and degree-days can be told by heart.
const prediction = forecast({
  lifeCycle: danausPlexippus,
  found: { stage: "pupa", on: "2026-07-01T00:00", age: "new" },
  temperatures: constantTemperature(21.5),
});
// 120.1 degree-days: 12.01 days, on 2026-07-13 at 00:14.

describe("compare", () => {
  it("measures days and degree-days, logged less expected", () => {
    const { rows, biasDays, meanAbsoluteErrorDays, biasDegreeDays } = compare(prediction, [
      logEntry({ stage: "adult", on: "2026-07-13T12:00" }),
    ]);
    expect(rows[0]?.errorDays).toBeCloseTo(12.5 - 12.01, 4);
    expect(rows[0]?.errorDegreeDays).toBeCloseTo(10 * (12.5 - 12.01), 3);
    expect([biasDays, meanAbsoluteErrorDays]).toEqual([rows[0]?.errorDays, rows[0]?.errorDays]);
    expect(biasDegreeDays).toBe(rows[0]?.errorDegreeDays);
    expect(rows[0]).toMatchObject({ insideWindow: true, reason: null, loggedOn: "2026-07-13T12:00" });
  });

  it("spreads the first day from the find on", () => {
    // Found at noon with a hundredth of 120.1 degree-days to go: 10 a day come at 14:53.
    const found = { stage: "pupa", on: "2026-07-01T12:00", age: 0.99 } as const;
    const soon = forecast({ lifeCycle: danausPlexippus, found, temperatures: constantTemperature(21.5) });
    const { rows } = compare(soon, [
      logEntry({ stage: "adult", on: "2026-07-01T13:00" }),
      logEntry({ stage: "adult", on: "2026-07-01T11:00" }),
    ]);
    expect(rows[0]?.errorDegreeDays).toBeCloseTo(10 / 24 - 1.201, 3);
    expect(rows[0]?.errorDegreeDays).toBeCloseTo(10 * (rows[0]?.errorDays ?? 0), 3);
    // Before the find nothing was counted.
    expect(rows[1]?.errorDegreeDays).toBeCloseTo(-1.201, 3);
  });

  it("weighs means by the animals logged", () => {
    const { biasDays, meanAbsoluteErrorDays, shareInside } = compare(prediction, [
      logEntry({ stage: "adult", on: "2026-07-12T00:00", count: 3 }),
      logEntry({ stage: "adult", on: "2026-07-14T00:00", count: 1 }),
    ]);
    const [early, late] = [11 - 12.01, 13 - 12.01];
    expect(biasDays).toBeCloseTo((3 * early + late) / 4, 4);
    expect(meanAbsoluteErrorDays).toBeCloseTo((3 * -early + late) / 4, 4);
    // The window reaches about 6 % to either side: 11.3 to 12.8 days.
    expect(shareInside).toBe(0);
  });

  it("takes a day without a time as noon, and as inside when any of it is", () => {
    const late = prediction.stages[0]?.begins.late ?? "";
    const { rows } = compare(prediction, [logEntry({ stage: "adult", on: late.slice(0, 10) })]);
    expect(rows[0]?.insideWindow).toBe(true);
    const noon = compare(prediction, [logEntry({ stage: "adult", on: `${late.slice(0, 10)}T12:00` })]);
    expect(rows[0]?.errorDays).toBeCloseTo(noon.rows[0]?.errorDays ?? Number.NaN, 6);
    const after = compare(prediction, [logEntry({ stage: "adult", on: "2026-07-20" })]);
    expect(after.rows[0]?.insideWindow).toBe(false);
  });

  it("keeps entries that were not predicted, with the reason", () => {
    const { rows, biasDays, shareInside } = compare(prediction, [
      logEntry({ stage: "pupa", on: "2026-07-01" }),
    ]);
    expect(rows[0]).toMatchObject({ errorDays: null, errorDegreeDays: null, insideWindow: null });
    expect(rows[0]?.reason).toContain("not ahead of the pupa");
    expect([biasDays, shareInside]).toEqual([null, null]);
  });

  it("keeps entries of a stage whose date is not known, with the reason", () => {
    const short = forecast({
      lifeCycle: danausPlexippus,
      found: { stage: "egg", on: "2026-07-01" },
      temperatures: constantTemperature(25, { from: "2026-06-01", to: "2026-07-10" }),
    });
    const { rows } = compare(short, [logEntry({ stage: "adult", on: "2026-07-27" })]);
    expect(rows[0]?.errorDays).toBeNull();
    expect(rows[0]?.reason).toContain("temperatures end");
  });

  it("says so when the degree-day table does not reach a logged day", () => {
    const { rows } = compare(prediction, [logEntry({ stage: "adult", on: "2027-07-13" })]);
    expect(rows[0]?.errorDays).toBeGreaterThan(300);
    expect(rows[0]?.errorDegreeDays).toBeNull();
    expect(rows[0]?.reason).toContain("does not reach");
  });

  it("takes degree-days from the clock of the stage that ends", () => {
    const ladybird = forecast({
      lifeCycle: findSpecies("coccinella-septempunctata"),
      found: { stage: "egg", on: "2026-07-01T00:00", age: "new" },
      temperatures: constantTemperature(21.5),
    });
    const hatch = ladybird.stages.find(({ stage }) => stage === "instar-1")?.begins.expected ?? "";
    const logged = new Date(Date.parse(`${hatch}Z`) - 43_200_000).toISOString().slice(0, 19);
    const { rows } = compare(ladybird, [logEntry({ stage: "instar-1", on: logged })]);
    // Half a day early at 21.5 °C over the egg's own threshold of 11.5 °C.
    expect(rows[0]?.errorDegreeDays).toBeCloseTo(-5, 3);
  });

  it("states the share that true windows would hold, and is plain data", () => {
    const result = compare(prediction, [logEntry({ stage: "adult", on: "2026-07-13" })]);
    expect(result.shareExpectedInside).toBeCloseTo(0.8, 12);
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });

  it("refuses an empty log and an entry that is none", () => {
    expect(refusalOf(() => compare(prediction, [])).code).toBe("invalid-log");
    const bad = JSON.parse(
      '[{"stage":"pupate","on":"2026-07-13","count":1,"cohort":null,"note":null,"row":null}]',
    );
    const refusal = refusalOf(() => compare(prediction, bad));
    expect(refusal.path).toEqual(["log", 0, "stage"]);
    expect(refusal.message).toContain("pupa");
  });
});
