import { InputError } from "../../errors.ts";
import { readLog } from "../../read/index.ts";
import { DAY_MS, endOfDay, formatInstant, knownZone, parseMoment } from "../../time/zone.ts";
import { logText, notesText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import { DATE_ORDERS, inFile } from "../files/input-file.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

/** Prints the log as it stands, or as it stood. */
export async function showLog(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("log", "the log");
  const [throughRow] = wholeNumbers(given, "rows", { from: 1, to: 9_999_999, most: 1 }) ?? [];
  const asOf = givenMoment(given);
  const bytes = await terminal.read(path);
  const { entries, superseded, notes } = await inFile(path, () =>
    Promise.resolve(
      readLog(bytes, {
        dateOrder: given.choice("date-order", DATE_ORDERS),
        ...(throughRow !== undefined && { throughRow }),
        ...(asOf !== undefined && { asOf }),
      }),
    ),
  );
  if (given.flag("json")) {
    terminal.out(`${JSON.stringify({ entries, superseded, notes }, null, 2)}\n`);
    return;
  }
  const at = asOf === undefined ? "" : ` on ${given.text("as-of")}`;
  const row = throughRow === undefined ? "" : ` down to row ${throughRow}`;
  const heading = at === "" && row === "" ? {} : { heading: `The log as it stood${at}${row}` };
  // The rows are listed already.
  const others = notes.filter(({ code }) => code !== "log-superseded");
  const remarks = notesText(others);
  terminal.out(`${logText(entries, superseded, heading)}${remarks === "" ? "" : `\n${remarks}\n`}`);
}

/** The moment that `--as-of` names in UTC: a day means its last second, by the clocks of `--zone`. */
function givenMoment(given: Given): string | undefined {
  const text = given.text("as-of");
  if (text === undefined) {
    if (given.text("zone") === undefined) return undefined;
    throw new InputError("invalid-option", "--zone is for --as-of, which is not given.", { path: ["zone"] });
  }
  const zone = knownZone(given.text("zone") ?? "UTC");
  const { day, instant } = parseMoment(text, zone, ["--as-of"]);
  const moment = instant ?? endOfDay(day, zone) - 1000;
  if (Math.abs(moment) < 9000 * 366 * DAY_MS) return `${formatInstant(moment, null)}Z`;
  throw new InputError("invalid-day", `--as-of is ${text}; no log is that old or new.`, { path: ["as-of"] });
}
