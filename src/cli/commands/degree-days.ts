import { type AccumulatedDay, accumulateDegreeDays } from "../../clock/accumulate.ts";
import { METHODS } from "../../diurnal/method.ts";
import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { CUTOFFS } from "../../response/linear.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type TemperatureUnit, celsiusDegreesToFahrenheit } from "../../units.ts";
import { degreeDayText, notesText } from "../../write/index.ts";
import { degreesText } from "../../write/layout/number-text.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { methodHelp } from "../options/method-help.ts";
import { TEMPERATURE_HELP, TEMPERATURE_OPTIONS, givenTemperatures } from "../options/temperature-options.ts";
import type { Terminal } from "../terminal.ts";
import { givenThresholds } from "../options/threshold-options.ts";

export const degreeDaysCommand: Command = {
  name: "degree-days",
  help: `moltline degree-days: degree-days day by day, with their running total.

  moltline degree-days --temperatures porch.csv --lower 10 --upper 30

Thresholds (in the unit of the file, or of --unit)
  --lower DEGREES       no development below it
  --upper DEGREES       development no longer rises above it
  --cutoff NAME         above the upper threshold, one of
                        ${CUTOFFS.join(", ")}
                        (default horizontal with an upper threshold)
${methodHelp(METHODS)}
  --from DAY, --to DAY  first and last day that count, such as 2026-04-01

${TEMPERATURE_HELP}

  --json                print the result as JSON`,
  options: {
    ...TEMPERATURE_OPTIONS,
    lower: "text",
    upper: "text",
    cutoff: "text",
    method: "text",
    from: "text",
    to: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const thresholds = givenThresholds(given);
  const { lower, upper } = thresholds;
  const cutoff = given.choice("cutoff", CUTOFFS);
  const method = given.choice("method", METHODS) ?? "single-sine";
  if (method.startsWith("clamped-") && cutoff !== undefined && cutoff !== "horizontal") {
    throw new InputError(
      "invalid-option",
      `--cutoff is ${cutoff}, but ${method} holds temperatures at the upper threshold and can do nothing else; leave --cutoff out, or take another --method.`,
      { path: ["cutoff"], value: cutoff },
    );
  }
  const from = given.text("from");
  const to = given.text("to");
  if (given.text("constant") !== undefined && (from === undefined || to === undefined)) {
    throw new InputError("invalid-option", "--constant has no first and no last day; give --from and --to.", {
      path: [from === undefined ? "from" : "to"],
    });
  }
  const { series, notes: readingNotes, assumptions, unit } = await givenTemperatures(given, terminal);
  const celsius = thresholds.celsius(unit);
  const days = accumulateDegreeDays(series, {
    ...celsius,
    ...(cutoff !== undefined && { cutoff }),
    method,
    zone: given.text("zone") ?? null,
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
  });
  const used = cutoff ?? (upper === null ? "none" : "horizontal");
  const notes = [...readingNotes, ...assumptions, ...nothingNotes(days, celsius.lower, series, unit)];
  if (!given.flag("json")) {
    const above = upper === null ? "" : `, upper ${upper} °${unit} (cutoff ${used})`;
    terminal.out(`Thresholds: lower ${lower} °${unit}${above}; ${method}\n\n`);
    terminal.out(
      `${[degreeDayText(days, unit), notesText(notes)].filter((text) => text !== "").join("\n\n")}\n`,
    );
    return;
  }
  const shown = (value: number): number => (unit === "F" ? celsiusDegreesToFahrenheit(value) : value);
  const rows = days.map(({ day, degreeDays, total }) => ({
    day,
    degreeDays: shown(degreeDays),
    total: shown(total),
  }));
  const result = {
    unit,
    lower,
    upper,
    cutoff: used,
    method,
    days: rows,
    notes,
  };
  terminal.out(`${JSON.stringify(result, null, 2)}\n`);
}

/** A column of zeros needs its reason: the highest temperature, when it stays below the threshold. */
function nothingNotes(
  days: readonly AccumulatedDay[],
  lower: number,
  series: TemperatureSeries,
  unit: TemperatureUnit,
): Note[] {
  const highest = highestOf(series);
  if (days.some(({ total }) => total > 0) || highest > lower) return [];
  const [hottest, threshold] = [degreesText(highest, unit), degreesText(lower, unit)];
  const message = `No degree-days: the highest temperature is ${hottest} and the lower threshold ${threshold}.`;
  return [{ code: "never-develops", message }];
}

function highestOf(series: TemperatureSeries): number {
  switch (series.kind) {
    case "daily":
      return series.max.reduce((highest, one) => (one > highest ? one : highest), -Infinity);
    case "readings":
      return series.temperature.reduce((highest, one) => Math.max(highest, one), -Infinity);
    case "constant":
      return series.temperature;
    case "joined":
      return Math.max(...series.parts.map(highestOf));
  }
}
