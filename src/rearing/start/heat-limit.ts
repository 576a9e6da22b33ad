import { givenLifeCycle } from "../../species/given-life-cycle.ts";
import { InputError, finite } from "../../errors.ts";
import { publishedOn } from "../../species/is-species.ts";
import type { LifeCycle, Mark } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type Celsius, celsiusToFahrenheit } from "../../units.ts";

/** A temperature above which a species must not be kept. */
export interface HeatLimit {
  /** Held temperatures above it are refused, °C. */
  readonly hottest: Celsius;
  /** What held heat above it does, as the rest of a sentence. */
  readonly harm: string;
  /** Held temperatures above it are taken to kill, °C; `null` where none is known. */
  readonly lethal: Celsius | null;
  readonly mark: Mark;
  readonly source: string;
}

const YORK_OBERHAUSER = "York & Oberhauser 2002, J. Kansas Ent. Soc. 75:290-298 (abstract read)";

/** What was published on held heat, by Latin name. */
export const HARMFUL_HEAT: Readonly<Record<string, HeatLimit>> = {
  "Danaus plexippus": {
    hottest: 29,
    harm: "is harmful",
    lethal: 33,
    mark: "read",
    source: YORK_OBERHAUSER,
  },
};

/**
 * No insect here is kept above it, °C, where neither a limit nor an upper threshold is known: common practice, no
 * source. The caution that every calendar carries names the lowest limit that was published, which is below it.
 */
const USUAL_HOTTEST: Celsius = 30;

/**
 * The highest temperature at which a species may be kept: what was published on harm, else the lowest upper
 * threshold of its stages or 30 °C, whichever is lower.
 * @param hottest A lower limit of one's own. It cannot be raised: that would take a published reason.
 * @throws {InputError} `invalid-option` for a limit that is not below the known one.
 */
export function heatLimit(lifeCycle: LifeCycle, hottest?: Celsius): HeatLimit {
  givenLifeCycle(lifeCycle);
  const known = knownLimit(lifeCycle);
  if (hottest === undefined) return known;
  finite(hottest, ["hottest"], "a temperature in °C");
  if (hottest === known.hottest) return known;
  if (hottest < known.hottest)
    return {
      hottest,
      harm: "is what you ruled out",
      lethal: known.lethal,
      mark: "common practice, no source",
      source: "your own limit",
    };
  throw new InputError(
    "invalid-option",
    `hottest is ${inBoth(hottest)}; it can lower the limit of ${inBoth(known.hottest)}, not raise it: above that, heat ${known.harm} (${known.source}).`,
    { path: ["hottest"], value: hottest },
  );
}

function knownLimit(lifeCycle: LifeCycle): HeatLimit {
  const published = publishedOn(lifeCycle, HARMFUL_HEAT);
  if (published !== null) return published;
  const uppers = lifeCycle.stages.flatMap(({ upper }) => (upper === null ? [] : [upper]));
  const [lowest] = uppers.sort((a, b) => a.value - b.value);
  if (lowest !== undefined && lowest.value <= USUAL_HOTTEST)
    return {
      hottest: lowest.value,
      harm: "no longer speeds development up and can harm",
      lethal: null,
      mark: lowest.mark,
      source: lowest.source,
    };
  return {
    hottest: USUAL_HOTTEST,
    harm: "can harm when it lasts",
    lethal: null,
    mark: "common practice, no source",
    source: "no limit for this species is at hand",
  };
}

/**
 * Refuses a held temperature above a limit.
 * @throws {InputError} `invalid-option`, with what the heat does and who says so.
 */
export function refuseHarm(temperature: Celsius, limit: HeatLimit, path: readonly string[]): void {
  if (temperature <= limit.hottest) return;
  const deadly = limit.lethal === null ? "" : `, above ${inBoth(limit.lethal)} it is assumed to kill`;
  throw new InputError(
    "invalid-option",
    `${path.join(".")} is ${inBoth(temperature)}; held heat above ${inBoth(limit.hottest)} ${limit.harm}${deadly} (${limit.source}). Keep the animals at ${inBoth(limit.hottest)} or below.`,
    { path, value: temperature },
  );
}

/** Refuses temperatures that are held above a limit, wherever they stand in a series. */
export function refuseHeldHarm(temperatures: TemperatureSeries | WeatherEnsemble, limit: HeatLimit): void {
  for (const series of seriesOf(temperatures)) {
    for (const part of series.kind === "joined" ? series.parts : [series]) {
      if (part.kind === "constant") refuseHarm(part.temperature, limit, ["temperatures"]);
    }
  }
}

function seriesOf(temperatures: TemperatureSeries | WeatherEnsemble): readonly TemperatureSeries[] {
  return temperatures.kind === "ensemble"
    ? temperatures.groups.flatMap(({ members }) => members)
    : [temperatures];
}

// A limit that harms when it is misread is given in both units; who asked in °F finds the number asked for.
function inBoth(celsius: Celsius): string {
  return `${Number(celsius.toFixed(2))} °C (${Number(celsiusToFahrenheit(celsius).toFixed(1))} °F)`;
}
