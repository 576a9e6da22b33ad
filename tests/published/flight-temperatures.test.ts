import { describe, expect, it } from "vitest";
import { RELEASE_CRITERIA } from "../../src/rearing/release/release-criteria.ts";
import type { ReleaseHour } from "../../src/rearing/release/release-hour.ts";
import { releaseHours } from "../../src/rearing/release/release-hours.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { fairWeather } from "../support/fair-weather.ts";
import { halfLastDigit, published } from "../support/published.ts";

const { rows } = published("flight-temperatures");

function figure(id: string): { celsius: number; half: number } {
  const row = rows.find((one) => one.id === id);
  if (row === undefined) throw new Error(`there is no figure ${id}`);
  return { celsius: Number(row.celsius), half: halfLastDigit(row.celsius) };
}

/** Noon at an air temperature, sunny or overcast, with the ordinary limit for warmth out of the way. */
function noonAt(temperature: number, cloud: number): ReleaseHour["verdict"] | undefined {
  const plan = releaseHours(
    [{ at: "2026-07-05T06:00" }],
    fairWeather("2026-07-05T04:00Z", 40, () => ({ temperature, cloud })),
    {
      lifeCycle: danausPlexippus,
      place: { latitude: 40.7, longitude: -74 },
      zone: "America/New_York",
      criteria: { ...RELEASE_CRITERIA, warm: { ...RELEASE_CRITERIA.warm, value: -60 } },
    },
  );
  return plan.emergences[0]?.firstDay?.hours.find(({ from }) => from.startsWith("2026-07-05T12"))?.verdict;
}

describe("the tiers of warmth against printed flight temperatures of monarchs", () => {
  // Masters, Malcolm & Brower 1988, Ecology 69:458-467, abstract: flight begins at a thorax of 12.7 to 16.0 °C;
  // basking reaches that from air of 9 °C. An animal in the shade is as warm as the air.
  const [low, high, basking, least] = [figure("F1"), figure("F2"), figure("F3"), figure("F4")];

  it("the limits lie at the figures or just on the safe side of them", () => {
    const { sunOnlyFrom, sunOnlyBelow, neverBelow } = RELEASE_CRITERIA;
    expect(sunOnlyFrom.value).toBeGreaterThanOrEqual(low.celsius);
    expect(sunOnlyFrom.value - low.celsius).toBeLessThan(1);
    expect(Math.abs(sunOnlyBelow.value - high.celsius)).toBeLessThanOrEqual(high.half);
    expect(neverBelow.value).toBeGreaterThanOrEqual(basking.celsius);
    expect(neverBelow.value - basking.celsius).toBeLessThanOrEqual(1);
    // Calvert's page: about 13 °C at least.
    expect(Math.abs(sunOnlyFrom.value - least.celsius)).toBeLessThanOrEqual(least.half);
  });

  it("above the upper end no sun is needed", () => {
    expect(noonAt(high.celsius + high.half, 100)).toBe("fit");
  });

  it("between the two ends the sun has to shine", () => {
    for (const share of [0.2, 0.5, 0.9]) {
      const between = low.celsius + share * (high.celsius - low.celsius);
      expect(noonAt(between, 100)).toBe("refused");
      expect(noonAt(between, 0)).toBe("fit");
    }
  });

  it("below the lower end not even the sun is taken for enough", () => {
    for (const degrees of [low.celsius, basking.celsius, basking.celsius - 5])
      expect(noonAt(degrees, 0)).toBe("refused");
  });

  it("holds all figures, read and not derived", () => {
    expect(rows.map(({ id, mark }) => [id, mark])).toEqual([
      ["F1", "read"],
      ["F2", "read"],
      ["F3", "read"],
      ["F4", "read"],
    ]);
  });
});
