import { describe, expect, it } from "vitest";
import { RELEASE_CRITERIA, type ReleaseCriteria } from "../../src/rearing/release/release-criteria.ts";
import type { ReleaseHour, ReleaseReasonCode } from "../../src/rearing/release/release-hour.ts";
import { type ReleaseOptions, releaseHours } from "../../src/rearing/release/release-hours.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { fairWeather, withoutHours } from "../support/fair-weather.ts";
import { inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const NEW_YORK: ReleaseOptions = {
  lifeCycle: danausPlexippus,
  place: { latitude: 40.7, longitude: -74 },
  zone: "America/New_York",
};
const SEEN = [{ at: "2026-07-05T07:00" }];
/** Midnight of 5 July in New York; entry 12 is noon. */
const MIDNIGHT = "2026-07-05T04:00Z";

const limits = (change: Partial<Record<keyof ReleaseCriteria, number>>): ReleaseCriteria => ({
  ...RELEASE_CRITERIA,
  ...Object.fromEntries(
    Object.entries(change).map(([name, value]) => [
      name,
      { value, mark: "common practice, no source", source: "set in this test" },
    ]),
  ),
});

function hourAt(hours: readonly ReleaseHour[] | undefined, local: string): ReleaseHour {
  const hour = hours?.find(({ from }) => from.startsWith(local));
  if (hour === undefined) throw new Error(`no hour at ${local}`);
  return hour;
}

const codesOf = (hour: ReleaseHour): ReleaseReasonCode[] => hour.reasons.map(({ code }) => code);

describe("releaseHours on a fair day", () => {
  const plan = releaseHours(SEEN, fairWeather(MIDNIGHT, 48), NEW_YORK);
  const [one] = plan.emergences;

  it("takes the first hour after four hours, and ranks every fit one", () => {
    expect(one).toMatchObject({
      which: "seen",
      count: 1,
      emergesAt: "2026-07-05T07:00:00-04:00",
      heldFrom: "2026-07-05T11:00:00-04:00",
      absence: null,
      nextDay: null,
      advice: [],
    });
    expect(one?.best?.from).toBe("2026-07-05T11:00:00-04:00");
    const fit = one?.firstDay?.hours.filter(({ verdict }) => verdict === "fit") ?? [];
    // Sunset is at 20:30: hours that end by 17:30 have three hours of sun left; the next morning has less
    // than a day's hold up to 07:00, and the sun rises at 05:30.
    expect(fit.map(({ from }) => from.slice(5, 16))).toEqual([
      "07-05T11:00",
      "07-05T12:00",
      "07-05T13:00",
      "07-05T14:00",
      "07-05T15:00",
      "07-05T16:00",
      "07-06T06:00",
    ]);
    expect(fit.map(({ rank }) => rank).sort()).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });

  it("gives each hour a reason for every aspect, in plain sentences", () => {
    for (const hour of one?.firstDay?.hours ?? []) {
      expect(hour.reasons.map(({ aspect }) => aspect)).toEqual([
        "hold",
        "warmth",
        "wind",
        "rain",
        "ahead",
        "daylight",
      ]);
      for (const { message } of hour.reasons) expect(message).toMatch(/^[A-Z].*\.$/);
    }
  });

  it("words the reasons in other units, and decides the same", () => {
    const cold = fairWeather(MIDNIGHT, 48, () => ({ temperature: 12, wind: 8 }));
    const said = (units: ReleaseOptions["units"] & object, weather = cold): string[] =>
      (releaseHours(SEEN, weather, { ...NEW_YORK, units }).emergences[0]?.firstDay?.hours ?? [])
        .flatMap(({ reasons }) => reasons)
        .flatMap(({ aspect, message }) => (["warmth", "wind"].includes(aspect) ? [message] : []));
    const fahrenheit = said({ temperature: "F", wind: "mph" });
    // 12 °C are 53.6 °F and 15 °C 59 °F; a mile is 1.609344 km.
    expect(fahrenheit).toContain("The air has 53.6 °F; at least 59 °F are asked for.");
    expect(fahrenheit).toContain("The wind blows at 17.9 mph; at most 11.2 mph are asked for.");
    expect(fahrenheit.join(" ")).not.toMatch(/°C|m\/s/);
    const metric = said({});
    expect(metric).toContain("The air has 12 °C; at least 15 °C are asked for.");
    expect(metric).toContain("The wind blows at 8 m/s; at most 5 m/s are asked for.");
    const bare = ({ emergences, ...rest }: typeof plan) => ({
      ...rest,
      emergences: JSON.parse(JSON.stringify(emergences, (key, value) => (key === "message" ? "" : value))),
    });
    for (const weather of [cold, fairWeather(MIDNIGHT, 48)])
      expect(
        bare(releaseHours(SEEN, weather, { ...NEW_YORK, units: { temperature: "F", wind: "kn" } })),
      ).toEqual(bare(releaseHours(SEEN, weather, NEW_YORK)));
  });

  it.each([
    [{ temperature: "K" }, 'units.temperature is "K"; it must be C or F.'],
    [{ wind: "bft" }, 'the unit of wind is "bft"'],
  ])("refuses reasons in %j", (units, says) => {
    const error = refusalOf(() =>
      Reflect.apply(releaseHours, null, [SEEN, fairWeather(MIDNIGHT, 48), { ...NEW_YORK, units }]),
    );
    expect(error.code).toBe("unknown-unit");
    expect(error.message).toContain(says);
  });

  it("is plain data", () => {
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });

  it("puts the law first", () => {
    expect(plan.cautions[0]?.id).toBe("local-law");
  });

  it("says that limits are common practice", () => {
    expect(plan.notes.map(({ code }) => code)).toEqual(["common-practice"]);
  });
});

describe("an hour is", () => {
  const noon = (
    change: Parameters<typeof fairWeather>[2],
    criteria: ReleaseCriteria = RELEASE_CRITERIA,
  ): ReleaseHour => {
    const plan = releaseHours(SEEN, fairWeather(MIDNIGHT, 48, change), { ...NEW_YORK, criteria });
    return hourAt(plan.emergences[0]?.firstDay?.hours, "2026-07-05T12:00");
  };
  const at = (hour: number, values: object) => (i: number) => (i === hour ? values : {});

  it.each<[string, number, object, ReleaseHour["verdict"], ReleaseReasonCode]>([
    ["warm at the limit of the sunless", 12, { temperature: 16, cloud: 100 }, "fit", "warm"],
    ["cool but sunny", 12, { temperature: 15, cloud: 50 }, "fit", "cool-but-sunny"],
    ["cool under cloud", 12, { temperature: 15, cloud: 51 }, "refused", "cool-without-sun"],
    ["cool under an unknown sky", 12, { temperature: 15.9, cloud: null }, "not-judged", "sun-unknown"],
    ["too cold", 12, { temperature: 14.9 }, "refused", "too-cold"],
    ["far too cold", 12, { temperature: 9.9 }, "refused", "far-too-cold"],
    ["without a temperature", 12, { temperature: null }, "not-judged", "temperature-unknown"],
    ["calm at the limit", 12, { wind: 5 }, "fit", "calm"],
    ["windy", 12, { wind: 5.1 }, "refused", "windy"],
    ["of unknown wind", 12, { wind: null }, "not-judged", "wind-unknown"],
    ["wet", 12, { rain: 0.1 }, "refused", "rain"],
    ["likely wet", 12, { rainChance: 21 }, "refused", "rain"],
    ["dry by one of two", 12, { rain: null, rainChance: 20 }, "fit", "dry"],
    ["neither wet nor dry", 12, { rain: null, rainChance: null }, "not-judged", "rain-unknown"],
    ["followed by rain at once", 13, { rain: 1 }, "refused", "rain-ahead"],
    ["followed by rain in the fourth hour", 16, { rain: 1 }, "refused", "rain-ahead"],
    ["followed by rain in the fifth hour", 17, { rain: 1 }, "fit", "fair-ahead"],
    ["followed by the unknown", 15, { rain: null, rainChance: null }, "not-judged", "ahead-unknown"],
  ])("%s", (_, hour, values, verdict, code) => {
    const judged = noon(at(hour, values));
    expect(judged.verdict).toBe(verdict);
    expect(codesOf(judged)).toContain(code);
    expect(judged.rank === null).toBe(verdict !== "fit");
  });

  it("refused for what is known, even where other things are not", () => {
    expect(noon(at(12, { wind: 12, temperature: null })).verdict).toBe("refused");
  });

  it("judged by limits of one's own, but never below the floors", () => {
    expect(noon(at(12, { temperature: 13, cloud: 0 }), limits({ warm: 12 })).verdict).toBe("fit");
    expect(noon(at(12, { temperature: 12.9, cloud: 0 }), limits({ warm: 12 })).verdict).toBe("refused");
    const lower = limits({ warm: 5, sunOnlyFrom: 5 });
    expect(noon(at(12, { temperature: 10, cloud: 0 }), lower).verdict).toBe("fit");
    expect(codesOf(noon(at(12, { temperature: 9.9, cloud: 0 }), lower))).toContain("far-too-cold");
    expect(noon(at(12, { wind: 8 }), limits({ wind: 8 })).verdict).toBe("fit");
    expect(noon(at(13, { rain: 1 }), limits({ fairHours: 0 })).verdict).toBe("fit");
  });

  it("worth its weakest point", () => {
    // Wind 4 of 5 m/s leaves a fifth of the limit; all else is further away.
    expect(noon(at(12, { wind: 4 })).score).toBeCloseTo(0.2, 6);
    expect(noon(at(12, { temperature: 15.5 })).score).toBeCloseTo(0.1, 6);
    expect(noon(at(12, { rainChance: 18 })).score).toBeCloseTo(0.1, 6);
  });
});

describe("what is not known is not guessed", () => {
  it("beyond the end of the weather there is no hour, with the reason", () => {
    const plan = releaseHours([{ at: "2026-07-20T07:00" }], fairWeather(MIDNIGHT, 24), NEW_YORK);
    expect(plan.emergences[0]).toMatchObject({ best: null, absence: { reason: "beyond-weather" } });
    expect(plan.emergences[0]?.firstDay?.hours).toEqual([]);
    expect(plan.emergences[0]?.absence?.message).toContain("2026-07-06 00:00");
    expect(plan.emergences[0]?.advice.map(({ code }) => code)).toContain("more-weather");
  });

  it("before its begin neither", () => {
    const plan = releaseHours([{ at: "2026-07-01T07:00" }], fairWeather(MIDNIGHT, 24), NEW_YORK);
    expect(plan.emergences[0]).toMatchObject({ best: null, absence: { reason: "before-weather" } });
  });

  it("weather that ends first leaves hours open and says so", () => {
    // Weather up to 15:00: the hours from 11:00 on need four dry hours after them.
    const plan = releaseHours(SEEN, fairWeather(MIDNIGHT, 15), NEW_YORK);
    expect(plan.emergences[0]?.absence?.reason).toBe("weather-ends");
    expect(hourAt(plan.emergences[0]?.firstDay?.hours, "2026-07-05T11:00").verdict).toBe("not-judged");
    const longer = releaseHours(SEEN, fairWeather(MIDNIGHT, 17), NEW_YORK);
    expect(longer.emergences[0]?.best?.from).toBe("2026-07-05T11:00:00-04:00");
    expect(longer.emergences[0]?.firstDay?.complete).toBe(false);
    expect(longer.notes.map(({ code }) => code)).toContain("series-ends-first");
  });

  it("weather that begins later too", () => {
    const plan = releaseHours(SEEN, fairWeather("2026-07-06T00:00Z", 6), NEW_YORK);
    expect(plan.emergences[0]?.firstDay?.absence?.reason).toBe("weather-ends");
    const night = releaseHours(
      SEEN,
      fairWeather("2026-07-06T00:00Z", 40, () => ({ wind: 9 })),
      NEW_YORK,
    );
    expect(night.emergences[0]?.firstDay?.absence?.reason).toBe("weather-begins-later");
  });

  it("hours of a gap are not judged, and reported", () => {
    const weather = withoutHours(fairWeather(MIDNIGHT, 48), [12]);
    const plan = releaseHours(SEEN, weather, NEW_YORK);
    const gap = hourAt(plan.emergences[0]?.firstDay?.hours, "2026-07-05T12:00");
    expect(gap.verdict).toBe("not-judged");
    expect(gap.weather.temperature).toBeNull();
    expect(hourAt(plan.emergences[0]?.firstDay?.hours, "2026-07-05T11:00").verdict).toBe("not-judged");
    expect(plan.emergences[0]?.best?.from).toBe("2026-07-05T13:00:00-04:00");
    expect(plan.notes.find(({ code }) => code === "gaps-in-readings")?.message).toContain(
      "1 hour has no weather",
    );
  });

  it("an emergence that the forecast does not reach has no hours, with its reason", () => {
    const window = { early: "2026-07-05T07:00", expected: "2026-07-06T07:00", late: null };
    const plan = releaseHours(window, fairWeather(MIDNIGHT, 96), NEW_YORK);
    expect(plan.emergences.map(({ which, best }) => [which, best !== null])).toEqual([
      ["early", true],
      ["expected", true],
      ["late", false],
    ]);
    expect(plan.emergences[2]?.absence?.reason).toBe("emergence-unknown");
  });
});

describe("when nothing fits", () => {
  it("the next day is looked at, and there is something to do", () => {
    const windy = fairWeather(MIDNIGHT, 96, (i) => (i < 36 ? { wind: 9 } : {}));
    const [one] = releaseHours(SEEN, windy, NEW_YORK).emergences;
    expect(one?.firstDay).toMatchObject({ best: null, complete: true, absence: { reason: "nothing-fits" } });
    expect(one?.best?.from).toBe("2026-07-06T12:00:00-04:00");
    expect(one?.absence).toBeNull();
    expect(one?.advice.map(({ code, from }) => [code, from])).toEqual([
      ["keep", null],
      ["dim-and-cool", null],
      ["offer-food", "2026-07-06T07:00:00-04:00"],
      ["next-day", "2026-07-06T12:00:00-04:00"],
    ]);
    for (const { mark } of one?.advice ?? []) expect(mark).toBe("common practice, no source");
  });

  it("on the next day either, that is said", () => {
    const [one] = releaseHours(
      SEEN,
      fairWeather(MIDNIGHT, 96, () => ({ temperature: 8 })),
      NEW_YORK,
    ).emergences;
    expect(one).toMatchObject({ best: null, absence: { reason: "nothing-fits" } });
    expect(one?.nextDay?.absence?.reason).toBe("nothing-fits");
  });
});

describe("some animals are never planned for", () => {
  const weather = fairWeather(MIDNIGHT, 96);
  const ruled = SPECIES.filter(({ handling }) =>
    handling.some((one) => one === "never-release" || one === "not-native-in-places"),
  );

  it.each(ruled.map((lifeCycle) => ({ id: lifeCycle.species, lifeCycle })))("$id", ({ lifeCycle }) => {
    const plan = releaseHours(SEEN, weather, { ...NEW_YORK, lifeCycle });
    expect(plan.emergences).toEqual([]);
    expect(plan.ruledOut?.code).toBe(
      lifeCycle.handling.includes("never-release") ? "never-release" : "not-native",
    );
    expect(plan.ruledOut?.message).toMatch(/release/);
    expect(plan.cautions[0]?.id).toBe("local-law");
  });

  it("there are such species, and others", () => {
    expect(ruled.length).toBeGreaterThan(5);
    expect(ruled).not.toContain(danausPlexippus);
  });

  it("unfit animals are listed apart", () => {
    const plan = releaseHours(
      [
        { at: "2026-07-05T07:00", animal: "A" },
        { at: "2026-07-05T08:00", animal: "B", unfit: true },
        { at: "2026-07-05T09:00", count: 3 },
      ],
      weather,
      { ...NEW_YORK, unfit: 1 },
    );
    expect(plan.emergences.map(({ animal, count }) => [animal, count])).toEqual([
      ["A", 1],
      [null, 3],
    ]);
    expect(plan).toMatchObject({ healthy: 3, unfit: { count: 2, animals: ["B"] }, ruledOut: null });
    expect(plan.unfit?.message).toContain("stay out of the wild");
  });

  it("without a healthy one there is nothing to release", () => {
    const plan = releaseHours(SEEN, weather, { ...NEW_YORK, unfit: 1 });
    expect(plan).toMatchObject({ healthy: 0, ruledOut: { code: "none-healthy" }, emergences: [] });
  });

  it("a forecast of one species with the handling of another is refused", () => {
    const result = { ...inventedForecast(), species: "pieris-rapae" };
    expect(refusalOf(() => releaseHours(result, weather, NEW_YORK)).message).toContain("pieris-rapae");
  });

  it("another species than the monarch is told where the flight figures are from", () => {
    const lifeCycle = { ...findSpecies("coccinella-septempunctata"), handling: [] };
    const notes = releaseHours(SEEN, weather, { ...NEW_YORK, lifeCycle }).notes;
    expect(notes.some(({ message }) => message.includes("measured on monarchs"))).toBe(true);
  });
});

describe("from a forecast", () => {
  it("the adult window gives three emergences, and its notes come along", () => {
    const result = inventedForecast();
    const adult = result.stages.at(-1)?.begins;
    const weather = fairWeather(`${adult?.early?.slice(0, 10)}T04:00Z`, 240);
    const plan = releaseHours(result, weather, { lifeCycle: danausPlexippus, place: NEW_YORK.place });
    expect(plan.zone).toBe("America/New_York");
    expect(plan.healthy).toBe(12);
    expect(plan.emergences.map(({ emergesAt }) => emergesAt)).toEqual([
      adult?.early,
      adult?.expected,
      adult?.late,
    ]);
    for (const { best } of plan.emergences) expect(best).not.toBeNull();
    expect(plan.notes).toEqual(expect.arrayContaining([...result.notes]));
  });
});

describe("the sun and the clocks", () => {
  const far = (change: Partial<ReleaseOptions>) => ({ ...NEW_YORK, ...change });

  it("under the midnight sun the night is as light as the day", () => {
    const options = far({ place: { latitude: 70, longitude: 25 }, zone: "Europe/Oslo" });
    const plan = releaseHours([{ at: "2026-06-21T18:00" }], fairWeather("2026-06-21T12:00Z", 60), options);
    const hours = plan.emergences[0]?.firstDay?.hours ?? [];
    expect(hours.filter(({ verdict }) => verdict === "fit")).toHaveLength(20);
    expect(new Set(hours.map(({ sunLeftHours }) => sunLeftHours))).toEqual(new Set([null]));
  });

  it("in the polar night nothing fits", () => {
    const options = far({ place: { latitude: 70, longitude: 25 }, zone: "Europe/Oslo" });
    const plan = releaseHours([{ at: "2026-12-21T08:00" }], fairWeather("2026-12-21T00:00Z", 96), options);
    const [one] = plan.emergences;
    expect(one?.absence?.reason).toBe("nothing-fits");
    expect(one?.firstDay?.hours.every((hour) => codesOf(hour).includes("dark"))).toBe(true);
    expect(one?.firstDay?.hours[0]?.reasons.at(-1)?.message).toBe("The sun does not rise.");
  });

  it.each([
    // Clocks go forward on 8 March and back on 1 November 2026.
    ["forward", "2026-03-07T22:00", "2026-03-08T03:00:00-04:00", "2026-03-08T23:00:00-04:00"],
    ["back", "2026-10-31T22:00", "2026-11-01T01:00:00-05:00", "2026-11-01T21:00:00-05:00"],
  ])("on the day clocks go %s, hours held are real hours", (_, at, heldFrom, until) => {
    const start = `${at.slice(0, 10)}T00:00Z`;
    const [one] = releaseHours([{ at }], fairWeather(start, 96), NEW_YORK).emergences;
    expect(one?.heldFrom).toBe(heldFrom);
    expect(one?.firstDay?.to).toBe(until);
    expect(one?.firstDay?.hours).toHaveLength(24);
    expect(new Set(one?.firstDay?.hours.map(({ from }) => from)).size).toBe(24);
    expect(one?.best).not.toBeNull();
  });
});

describe("releaseHours refuses", () => {
  const weather = fairWeather(MIDNIGHT, 48);
  const with_ = (change: object) => () => releaseHours(SEEN, weather, { ...NEW_YORK, ...change });

  it.each([
    ["no zone", with_({ zone: null }), "zone-needed", "America/New_York"],
    ["an unknown zone", with_({ zone: "Mars/Base" }), "invalid-zone", "Mars/Base"],
    [
      "a place that is none",
      with_({ place: { latitude: 91, longitude: 0 } }),
      "invalid-option",
      "place.latitude",
    ],
    [
      "a longitude of the wrong sign",
      with_({ place: { latitude: 40, longitude: 74 } }),
      "invalid-option",
      "east",
    ],
    ["a negative count", with_({ unfit: -1 }), "invalid-option", "unfit is -1"],
    ["more unfit than there are", with_({ unfit: 2 }), "invalid-option", "more than the 1"],
    [
      "more healthy ones than there are",
      with_({ healthy: 50 }),
      "invalid-option",
      "healthy is 50, more than the 1",
    ],
    [
      "more of both",
      with_({ healthy: 1, unfit: 1 }),
      "invalid-option",
      "healthy is 1 and unfit 1, more than",
    ],
    ["half an animal", with_({ healthy: 0.5 }), "invalid-option", "healthy is 0.5"],
    [
      "a limit that is no number",
      with_({ criteria: limits({ wind: NaN }) }),
      "invalid-number",
      "criteria.wind.value",
    ],
    ["half a fair hour", with_({ criteria: limits({ fairHours: 1.5 }) }), "invalid-option", "fairHours"],
    ["tiers upside down", with_({ criteria: limits({ sunOnlyFrom: 20 }) }), "invalid-option", "sunOnlyFrom"],
    ["no room to hold", with_({ criteria: limits({ longestHold: 4 }) }), "invalid-option", "longestHold"],
    [
      "a day without a time",
      () => releaseHours([{ at: "2026-07-05" }], weather, NEW_YORK),
      "invalid-instant",
      "a time",
    ],
    ["an empty list", () => releaseHours([], weather, NEW_YORK), "invalid-found", "empty"],
    [
      "no animals",
      () => releaseHours([{ at: "2026-07-05T07:00", count: 0 }], weather, NEW_YORK),
      "invalid-found",
      "count",
    ],
  ] as const)("%s", (_, call, code, says) => {
    const refusal = refusalOf(call);
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(says);
  });
});

describe("a refused emergence", () => {
  it.each<[unknown, (string | number)[]]>([
    [[], ["emergences"]],
    [null, ["emergences"]],
    [undefined, ["emergences"]],
    [{}, ["emergences"]],
    [5, ["emergences"]],
    [[{ at: "2026-07-05" }], ["emergences", 0, "at"]],
    [[{ at: "2026-07-05T09:00", count: 0 }], ["emergences", 0, "count"]],
    [{ early: "2026-07-05", expected: null, late: null }, ["emergences", "early"]],
  ])("%j is named by one place", (emergences, path) => {
    expect(
      refusalOf(() => releaseHours(emergences as never, fairWeather(MIDNIGHT, 48), NEW_YORK)).path,
    ).toEqual(path);
  });
});
