import { otherYear } from "../../cohort/other-year.ts";
import { type ForecastInput, forecast } from "../../forecast/forecast.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import {
  type Figure,
  type FigureOptions,
  type LoggedStage,
  type PlotLibrary,
  degreeDayFigure,
  degreeDayRows,
  figureSvg,
  forecastDays,
  stageTotalRows,
  stageWindowFigure,
  stageWindowRows,
  temperatureFigure,
  temperatureRows,
} from "../../plot/index.ts";
import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { notesText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { drawingLibraries } from "../drawing-libraries.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../options/forecast-options.ts";
import { LOG_OPTIONS, givenLog } from "../options/log-options.ts";
import { givenTargets } from "../files/target-files.ts";
import type { Terminal } from "../terminal.ts";

const PICTURES = ["windows", "degree-days", "temperatures"] as const;

export const drawCommand: Command = {
  name: "draw",
  help: `moltline draw: a picture of a forecast for a report, a poster or a web page.

  moltline draw --picture windows --out windows.svg --temperatures porch.csv \\
    --species danaus-plexippus --found egg --on 2026-06-08 --unit F

The picture
  --picture WHICH       windows (default): when each stage begins; degree-days:
                        how they add up; temperatures: day by day
  --out FILE            the SVG file to write; --force replaces one that is there
  --width PIXELS        how wide, 320 to 2000 (default 640)
  --show C|F            the scale that is shown (default C)
  --log FILE            your log: what was seen stands in the windows
  --cohort NAME         which animals, where the log has several groups

${FORECAST_HELP}

Drawing needs two packages beside moltline: @observablehq/plot and jsdom.`,
  options: {
    ...FORECAST_OPTIONS,
    ...LOG_OPTIONS,
    picture: "text",
    out: "text",
    width: "text",
    show: "text",
    force: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  given.needed("out", "the SVG file to write");
  const { out = "" } = await givenTargets(given, { out: "windows.svg" }, terminal);
  const picture = given.choice("picture", PICTURES) ?? "windows";
  const width = givenWidth(given);
  const unit = given.choice("show", ["C", "F"]) ?? "C";
  const { input, notes } = await givenInput(given, terminal);
  const log = await givenSeen(input, picture, given, terminal);
  const { plot, document } = await drawingLibraries();
  const figure = drawn(plot, picture, forecast(input), input, log.entries, { width, unit, document });
  await terminal.write(out, `${figureSvg(figure)}\n`, given.flag("force"));
  const remarks = notesText([...log.notes, ...notes]);
  terminal.out(`Wrote ${out}.\n${remarks === "" ? "" : `\n${remarks}\n`}`);
}

function drawn(
  plot: PlotLibrary,
  picture: (typeof PICTURES)[number],
  dates: Forecast,
  { temperatures }: ForecastInput,
  log: readonly LoggedStage[],
  options: FigureOptions,
): Figure {
  switch (picture) {
    case "windows":
      return stageWindowFigure(plot, stageWindowRows(dates, log), { ...options, from: dates.found.at });
    case "degree-days":
      return degreeDayFigure(plot, degreeDayRows(dates), { ...options, stages: stageTotalRows(dates) });
    case "temperatures": {
      if (temperatures.kind === "ensemble") {
        throw new InputError(
          "invalid-option",
          "--picture temperatures shows one course of temperatures, and with past years there are several; leave out --past-years and --normals, or draw windows.",
          { path: ["picture"] },
        );
      }
      const rows = temperatureRows(temperatures, forecastDays(dates));
      return temperatureFigure(plot, rows, { ...options, thresholds: dates.tables });
    }
  }
}

function givenWidth(given: Given): number {
  const width = given.number("width") ?? 640;
  if (width >= 320 && width <= 2000) return width;
  throw new InputError("invalid-option", `--width is ${width}; it must be 320 to 2000 pixels.`, {
    path: ["width"],
    value: width,
  });
}

/** What the log has, where one is named. */
async function givenSeen(
  { lifeCycle, found }: ForecastInput,
  picture: string,
  given: Given,
  terminal: Terminal,
): Promise<{ entries: readonly LoggedStage[]; notes: readonly Note[] }> {
  const path = given.text("log");
  if (path === undefined) {
    if (given.text("cohort") === undefined) return { entries: [], notes: [] };
    throw new InputError("invalid-option", "--cohort is one group of a log; name the log with --log.", {
      path: ["cohort"],
    });
  }
  if (picture === "windows") {
    const { entries, notes } = await givenLog(path, lifeCycle, given, terminal);
    return { entries, notes: [...otherYear(entries, found.on), ...notes] };
  }
  throw new InputError("invalid-option", `--log is drawn in the windows; leave it out of ${picture}.`, {
    path: ["log"],
  });
}
