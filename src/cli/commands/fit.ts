import { type RankedModel, compareRateModels } from "../../evaluate/rate-fit/compare-rate-models.ts";
import { THRESHOLD_METHODS, estimateThreshold } from "../../evaluate/threshold/estimate-threshold.ts";
import type { Note } from "../../notes.ts";
import { readTrials } from "../../read/index.ts";
import { notesText, rateModelText, thresholdText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { UNITS, inFile } from "../files/input-file.ts";
import type { Terminal } from "../terminal.ts";

export const fitCommand: Command = {
  name: "fit",
  help: `moltline fit: thresholds from your own trials at constant temperatures.

  moltline fit --trials trials.csv

Your trials are a CSV file with a line for each temperature, held constant:
how many days development took, and of how many animals that is the mean.
These are invented:
  temperature °C,days,animals
  18,30,12
  21,22.5,10
  24,17.5,12
  27,14.5,9
Four temperatures or more show whether they lie on a straight line. Without a
column of animals every line counts the same.

  --trials FILE         the trials; - for standard input
  --models              fit curves with an optimum too, and rank them; needs six
                        temperatures or more, and some of them too hot
  --unit C|F            unit of temperatures, where the file does not say it
  --temperature-column NAME
                        likewise --days-column and --animals-column: the header,
                        where it is not plain
  --place NAME          which place, where a file holds several

  --json                print the result as JSON, in °C`,
  options: {
    trials: "text",
    models: "flag",
    unit: "text",
    "temperature-column": "text",
    "days-column": "text",
    "animals-column": "text",
    place: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("trials", "the file of your trials");
  const { trials, estimates, models, notes } = await inFile(path, async () => {
    const read = readTrials(await terminal.read(path), {
      unit: given.choice("unit", UNITS),
      location: given.text("place"),
      columns: {
        temperature: given.text("temperature-column"),
        days: given.text("days-column"),
        animals: given.text("animals-column"),
      },
    });
    return {
      ...read,
      estimates: THRESHOLD_METHODS.map((method) => estimateThreshold(read.trials, { method })),
      models: given.flag("models") ? compareRateModels(read.trials) : null,
    };
  });
  const [best] = models ?? [];
  const all = once([
    ...notes,
    ...estimates.flatMap((estimate) => estimate.notes),
    ...(best === undefined || best.aicc === null ? [] : aboutBest(best)),
  ]);
  if (given.flag("json")) {
    const result = { trials, estimates, ...(models !== null && { models }), notes: all };
    terminal.out(`${JSON.stringify(result, null, 2)}\n`);
    return;
  }
  const unit = notes.some(({ code }) => code === "unit-converted") ? "F" : "C";
  const parts = [
    thresholdText(trials, estimates, unit),
    models === null ? "" : rateModelText(models),
    notesText(all),
  ];
  terminal.out(`${parts.filter((text) => text !== "").join("\n\n")}\n`);
}

function aboutBest({ model, fit }: RankedModel): Note[] {
  return (fit?.notes ?? []).map(({ code, message }) => ({ code, message: `${model}: ${message}` }));
}

/** Both methods say the same of the same trials. */
function once(notes: readonly Note[]): Note[] {
  return notes.filter(({ message }, i) => notes.findIndex((other) => other.message === message) === i);
}
