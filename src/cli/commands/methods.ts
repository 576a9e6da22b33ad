import { InputError } from "../../errors.ts";
import { compareMethods } from "../../evaluate/methods/compare-methods.ts";
import { fahrenheitDegreesToCelsius } from "../../units.ts";
import { methodComparisonText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { givenPlace } from "../options/given-place.ts";
import { mergedDays } from "../options/merged-days.ts";
import { RECORD_HELP, RECORD_OPTIONS } from "../options/reading-options.ts";
import { givenTemperatures } from "../options/temperature-options.ts";
import type { Terminal } from "../terminal.ts";
import { givenThresholds } from "../options/threshold-options.ts";

export const methodsCommand: Command = {
  name: "methods",
  help: `moltline methods: what each way of reckoning makes of your temperatures.

  moltline methods --temperatures porch.csv --lower 10 --upper 30 --amount 400

A day's lowest and highest temperature do not say how the hours between them
run. Each method draws them in its own way; this shows how much that matters.
With a logger's readings the methods are held against the readings themselves.

Thresholds (in the unit of the file, or of --unit)
  --lower DEGREES       no development below it
  --upper DEGREES       development no longer rises above it; all cutoffs are
                        compared
  --from DAY, --to DAY  first and last day that count (default: all whole days)
  --amount NUMBER       degree-days to be reached: each method then says when

The place, for the methods that follow the sun; they need --zone too
  --latitude, --longitude DEGREES
                        north and east are positive

${RECORD_HELP}

  --json                print the result as JSON, in °C`,
  options: {
    ...RECORD_OPTIONS,
    lower: "text",
    upper: "text",
    from: "text",
    to: "text",
    amount: "text",
    latitude: "text",
    longitude: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const thresholds = givenThresholds(given);
  const [from, to, amount] = [given.text("from"), given.text("to"), given.number("amount")];
  if (amount !== undefined && amount <= 0) {
    throw new InputError("invalid-option", `--amount is ${amount}; it must be above 0.`, {
      path: ["amount"],
      value: amount,
    });
  }
  const place = givenPlace(given);
  const { series, notes, assumptions, unit } = await givenTemperatures(given, terminal);
  const comparison = compareMethods(mergedDays(series), thresholds.celsius(unit), {
    zone: given.text("zone") ?? null,
    ...(place !== undefined && { place }),
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(amount !== undefined && { amount: unit === "F" ? fahrenheitDegreesToCelsius(amount) : amount }),
  });
  const result = { ...comparison, notes: [...notes, ...assumptions, ...comparison.notes] };
  terminal.out(
    given.flag("json") ? `${JSON.stringify(result, null, 2)}\n` : methodComparisonText(result, unit),
  );
}
