import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readHourlyWeather } from "../../src/read/index.ts";
import { type HourlyWeather, hourlyWeather } from "../../src/rearing/release/hourly-weather.ts";
import type { ReleaseHour } from "../../src/rearing/release/release-hour.ts";
import { type ReleaseOptions, releaseHours } from "../../src/rearing/release/release-hours.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { celsiusToFahrenheit } from "../../src/units.ts";
import { degrees } from "../support/arbitraries.ts";
import { forsytheDayLength } from "../support/sun-formulas.ts";

const HOUR = 3_600_000;
const HOURS = 60;
const START = Date.UTC(2026, 6, 5, 4);
const EMERGED = [{ at: "2026-07-05T06:20" }];
const OPTIONS: ReleaseOptions = {
  lifeCycle: danausPlexippus,
  place: { latitude: 40.7, longitude: -74 },
  zone: "America/New_York",
};

const missing = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.option(value, { freq: 30, nil: null });

/** Hours around the limits, where most of them can go either way. */
const anyWeather = fc
  .array(
    fc.record({
      temperature: missing(degrees(12, 28)),
      wind: missing(degrees(0, 6)),
      rain: missing(fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 0, 0, 0.4)),
      rainChance: missing(fc.integer({ min: 0, max: 22 })),
      cloud: missing(fc.integer({ min: 0, max: 100 })),
    }),
    { minLength: HOURS, maxLength: HOURS },
  )
  .map((hours) =>
    hourlyWeather({
      at: hours.map((_, i) => START + i * HOUR),
      temperature: hours.map((one) => one.temperature),
      wind: hours.map((one) => one.wind),
      rain: hours.map((one) => one.rain),
      rainChance: hours.map((one) => one.rainChance),
      cloud: hours.map((one) => one.cloud),
    }),
  );

function hoursOf(weather: HourlyWeather, options = OPTIONS): readonly ReleaseHour[] {
  return releaseHours(EMERGED, weather, options).emergences[0]?.firstDay?.hours ?? [];
}

/** Rank for comparing: an hour without one comes after all that have one. */
function place(hours: readonly ReleaseHour[], at: number): number {
  return hours.find(({ from }) => Date.parse(from) === at)?.rank ?? Infinity;
}

function changed(
  column: readonly (number | null)[],
  i: number,
  by: (value: number) => number,
): (number | null)[] {
  return column.map((value, k) => (k === i && value !== null ? by(value) : value));
}

describe("an hour made worse never ranks better", () => {
  const index = fc.integer({ min: 0, max: HOURS - 1 });

  it.each<[string, (weather: HourlyWeather, i: number, by: number) => HourlyWeather]>([
    ["colder", (w, i, by) => ({ ...w, temperature: changed(w.temperature, i, (t) => t - by) })],
    ["windier", (w, i, by) => ({ ...w, wind: changed(w.wind, i, (v) => v + by) })],
    ["wetter", (w, i, by) => ({ ...w, rain: w.rain && changed(w.rain, i, (r) => r + by) })],
    [
      "likelier to be wet",
      (w, i, by) => ({
        ...w,
        rainChance: w.rainChance && changed(w.rainChance, i, (c) => Math.min(100, c + by)),
      }),
    ],
    [
      "cloudier",
      (w, i, by) => ({ ...w, cloud: w.cloud && changed(w.cloud, i, (c) => Math.min(100, c + 9 * by)) }),
    ],
  ])("%s", (_, worse) => {
    fc.assert(
      fc.property(anyWeather, index, degrees(0, 10), (weather, i, by) => {
        const at = START + i * HOUR;
        const [before, after] = [hoursOf(weather), hoursOf(worse(weather, i, by))];
        expect(place(after, at)).toBeGreaterThanOrEqual(place(before, at));
      }),
    );
  });

  it("and neither do the hours before a wetter one", () => {
    fc.assert(
      fc.property(anyWeather, index, (weather, i) => {
        const wetter = {
          ...weather,
          rainChance: weather.rainChance && changed(weather.rainChance, i, () => 100),
        };
        const [before, after] = [hoursOf(weather), hoursOf(wetter)];
        // Fit hours can only become fewer.
        for (const hour of after)
          if (hour.verdict === "fit")
            expect(before.find(({ from }) => from === hour.from)?.verdict).toBe("fit");
      }),
    );
  });
});

describe("ranks", () => {
  it("are 1, 2, 3 and so on, by falling score and then by time", () => {
    fc.assert(
      fc.property(anyWeather, (weather) => {
        const fit = hoursOf(weather)
          .filter(({ verdict }) => verdict === "fit")
          .sort((a, b) => (a.rank ?? 0) - (b.rank ?? 0));
        fit.forEach((hour, k) => {
          expect(hour.rank).toBe(k + 1);
          const next = fit[k + 1];
          if (next === undefined) return;
          expect(hour.score).toBeGreaterThanOrEqual(next.score ?? 0);
          if (hour.score === next.score) expect(hour.from < next.from).toBe(true);
        });
      }),
    );
  });

  it("follow from the verdict: fit hours have one and nothing against them", () => {
    fc.assert(
      fc.property(anyWeather, (weather) => {
        for (const { verdict, rank, reasons } of hoursOf(weather)) {
          expect(rank !== null).toBe(verdict === "fit");
          const good = reasons.map((one) => one.good);
          expect(good.includes(false)).toBe(verdict === "refused");
          if (verdict === "not-judged") expect(good).toContain(null);
        }
      }),
    );
  });
});

describe("units and labels do not matter", () => {
  it("°F is °C, and mph, km/h and kn are m/s", () => {
    const text = (
      weather: HourlyWeather,
      temperature: (t: number) => number,
      wind: (v: number) => number,
    ): string =>
      weather.at
        .map((at, i) => {
          const [t, v] = [weather.temperature[i] ?? null, weather.wind[i] ?? null];
          return [
            new Date(at).toISOString().slice(0, 16) + "Z",
            t === null ? "" : temperature(t),
            v === null ? "" : wind(v),
            weather.rain?.[i] ?? "",
            weather.rainChance?.[i] ?? "",
            weather.cloud?.[i] ?? "",
          ].join(",");
        })
        .join("\n");
    const verdicts = (header: string, body: string) =>
      hoursOf(readHourlyWeather(`${header}\n${body}`).weather).map(({ from, verdict, rank }) => [
        from,
        verdict,
        rank,
      ]);
    const rest = "rain mm,rain %,cloud %";
    fc.assert(
      fc.property(anyWeather, (weather) => {
        const celsius = verdicts(`time,temp °C,wind m/s,${rest}`, text(weather, Number, Number));
        for (const [unit, factor] of [
          ["mph", 0.44704],
          ["km/h", 1 / 3.6],
          ["kn", 1852 / 3600],
        ] as const) {
          const other = text(weather, celsiusToFahrenheit, (v) => v / factor);
          expect(verdicts(`time,temp °F,wind ${unit},${rest}`, other)).toEqual(celsius);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("another name for the same clocks, or another zone's clocks, names the same instants", () => {
    const instants = (weather: HourlyWeather, zone: string) =>
      releaseHours([{ at: "2026-07-05T06:20-04:00" }], weather, {
        ...OPTIONS,
        zone,
      }).emergences[0]?.firstDay?.hours.map(({ from, verdict, rank }) => [Date.parse(from), verdict, rank]);
    fc.assert(
      fc.property(anyWeather, (weather) => {
        const here = instants(weather, "America/New_York");
        for (const zone of ["America/Toronto", "America/Chicago", "America/St_Johns", "Etc/GMT+4"])
          expect(instants(weather, zone)).toEqual(here);
      }),
      { numRuns: 30 },
    );
  });
});

describe("daylight is that of a published formula", () => {
  /** Hours in which the formula and the sun may differ: the equation of time, and the formula's own error. */
  const UNSURE = 17 / 60 + 8 / 60;

  it("as Forsythe et al. (1995) have it, away from the edges, up to 60°", () => {
    let [sure, up, enough] = [0, 0, 0];
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 365 }),
        degrees(-60, 60),
        degrees(0, 23),
        (dayOfYear, latitude, solarHour) => {
          // At longitude 0 local mean solar time is UTC.
          const at = Date.UTC(2025, 0, dayOfYear) + solarHour * HOUR;
          const weather = hourlyWeather({
            at: Array.from({ length: 8 }, (_, i) => at + i * HOUR),
            temperature: Array<number>(8).fill(24),
            wind: Array<number>(8).fill(1),
            rain: Array<number>(8).fill(0),
          });
          const emerged = new Date(at - 6 * HOUR).toISOString();
          const plan = releaseHours([{ at: emerged }], weather, {
            lifeCycle: danausPlexippus,
            place: { latitude, longitude: 0 },
            zone: "UTC",
          });
          const hour = plan.emergences[0]?.firstDay?.hours[0];
          const code = hour?.reasons.find(({ aspect }) => aspect === "daylight")?.code;
          const half = forsytheDayLength(dayOfYear, latitude, 0.8333) / 2;
          const [afterRise, left] = [solarHour - (12 - half), 12 + half - (solarHour + 1)];
          if ([afterRise, left, left - 3].some((gap) => Math.abs(gap) < UNSURE)) return;
          sure++;
          if (afterRise < 0 || left < 0) expect(code).toBe("dark");
          else if (left < 3) expect(code).toBe("little-sun-left");
          else {
            enough++;
            expect(code).toBe("daylight");
          }
          if (code !== "dark") {
            up++;
            expect(Math.abs((hour?.sunLeftHours ?? 0) - left)).toBeLessThan(UNSURE);
          }
        },
      ),
      { numRuns: 600 },
    );
    expect(sure).toBeGreaterThan(400);
    expect(up).toBeGreaterThan(150);
    expect(enough).toBeGreaterThan(80);
  });
});
