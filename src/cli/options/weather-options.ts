import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { dailyTemperatures, lastDay } from "../../temperature/daily.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import { joinTemperatures } from "../../temperature/join.ts";
import type { DailyTemperatures, TemperatureSeries } from "../../temperature/series.ts";
import { weatherEnsemble } from "../../temperature/weather-ensemble.ts";
import { addDays, civilDay, dayNumber } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import type { Given } from "./arguments.ts";
import { filledSeries, gapPolicy } from "./fill-options.ts";
import { inFile, notesAbout, readTemperatureFile } from "../files/input-file.ts";
import { mergedDays } from "./merged-days.ts";
import { inNames } from "./option-names.ts";
import { givenTemperatures } from "./temperature-options.ts";
import type { Terminal } from "../terminal.ts";

/**
 * Temperatures as the options ask for them: what is known, then a weather forecast and past years where they
 * are named.
 */
export async function givenWeather(
  given: Given,
  terminal: Terminal,
): Promise<{ temperatures: TemperatureSeries | WeatherEnsemble; notes: readonly Note[] }> {
  const [pastFile, weatherFile, until] = [
    given.text("past-years"),
    given.text("weather"),
    given.text("until"),
  ];
  if (until !== undefined) dayNumber(until, ["until"]);
  if (pastFile !== undefined) refuseOtherEnds(pastFile, given);
  const ahead = weatherFile === undefined ? null : await dailyFile(weatherFile, given, terminal);
  const coming = ahead === null ? [] : [asForecast(ahead.series)];
  if (pastFile === undefined) {
    // The weather forecast comes before what is assumed after the files, or it would never count.
    const { series, notes } = await givenTemperatures(given, terminal, (files) => [
      ...(until === undefined ? files : [cut(files, until)]),
      ...coming,
    ]);
    return { temperatures: series, notes: [...notes, ...(ahead?.notes ?? [])] };
  }
  const { series, notes } = await givenTemperatures(given, terminal);
  const past = await dailyFile(pastFile, given, terminal);
  const [forecast] = coming;
  const observed = mergedDays(series);
  // --normals is refused beside --past-years.
  const temperatures = inNames(
    (input) => (input === "by a named policy" ? "with --fill-gaps" : undefined),
    () =>
      weatherEnsemble({
        observed,
        past: past.series,
        ...(until !== undefined && { until }),
        ...(forecast !== undefined && { forecast }),
        // The season to be forecast can be in the file of past years too; it must not be its own past.
        exclude: [Number((until === undefined ? endOf(observed) : addDays(until, 1)).slice(0, 4))],
      }),
  );
  return { temperatures, notes: [...notes, ...(ahead?.notes ?? []), ...past.notes] };
}

/** Two answers to what comes after the last day known would leave one of them unused. */
function refuseOtherEnds(pastFile: string, given: Given): void {
  const other = ["normals", "constant"].find((name) => given.text(name) !== undefined);
  if (other === undefined) return;
  throw new InputError(
    "invalid-option",
    `--past-years and --${other} both say what comes after the last day known; give one of them.`,
    { path: ["past-years"], value: pastFile },
  );
}

/** Daily temperatures of a file, with its gaps filled as asked and its notes. */
async function dailyFile(
  path: string,
  given: Given,
  terminal: Terminal,
): Promise<{ series: DailyTemperatures; notes: readonly Note[] }> {
  const { series, notes } = await readTemperatureFile(path, given, terminal);
  return inFile(path, () => {
    if (series.kind === "daily") {
      const filled = filledSeries(series, gapPolicy(given, null), path);
      const all = [...notesAbout(path, notes), ...filled.notes, ...filled.assumptions];
      if (filled.series.kind === "daily") return Promise.resolve({ series: filled.series, notes: all });
    }
    throw new InputError("unknown-format", "this needs a minimum and a maximum for each day, not readings.", {
      path: ["format"],
      value: series.kind,
    });
  });
}

function asForecast(series: DailyTemperatures): DailyTemperatures {
  return dailyTemperatures(series.start, series.min, series.max, "forecast");
}

/** What the files know up to a day. */
function cut(files: readonly TemperatureSeries[], until: string): DailyTemperatures {
  const series = files.length === 0 ? null : mergedDays(joinTemperatures(...files));
  if (series?.kind !== "daily") {
    throw new InputError("invalid-option", "--until cuts files of daily temperatures only; leave it out.", {
      path: ["until"],
      value: until,
    });
  }
  const days = dayNumber(until, ["until"]) - dayNumber(series.start) + 1;
  if (days >= 1 && days <= series.min.length)
    return dailyTemperatures(
      series.start,
      series.min.subarray(0, days),
      series.max.subarray(0, days),
      series.origin.slice(0, days),
    );
  throw new InputError(
    "start-outside-series",
    `--until is ${until}, but the temperatures run from ${series.start} to ${lastDay(series)}; take one of these days.`,
    { path: ["until"], value: until },
  );
}

/** About the day after the last one of a series; only its year is needed. */
function endOf(series: TemperatureSeries): string {
  switch (series.kind) {
    case "daily":
      return addDays(lastDay(series), 1);
    case "readings":
      return civilDay(Math.floor((series.at.at(-1) ?? 0) / DAY_MS));
    case "constant":
      return series.to ?? "9999-12-31";
    case "joined":
      return series.parts.map(endOf).sort().at(-1) ?? "9999-12-31";
  }
}
