import type { LifeCycle } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { EXAMPLE_NOTE } from "../../read/log/log-rows.ts";
import { csvText } from "../../write/layout/csv-table.ts";
import { LOG_HEADER } from "../../write/tables/log-csv.ts";
import { wrapped } from "../../write/layout/text-layout.ts";
import type { Given } from "../options/arguments.ts";
import { givenLifeCycle } from "../options/forecast-options.ts";
import { givenTargets } from "../files/target-files.ts";
import type { Terminal } from "../terminal.ts";

/** Prints or writes a log to begin with. */
export async function writeTemplate(given: Given, terminal: Terminal): Promise<void> {
  const lifeCycle = await givenLifeCycle(given, terminal);
  const text = templateText(lifeCycle);
  const { out: path } = await givenTargets(given, { out: "log.csv" }, terminal);
  if (path === undefined) {
    terminal.out(text);
    return;
  }
  await terminal.write(path, text, given.flag("force"));
  const stages = [...lifeCycle.stages.map(({ stage }) => stage), "adult" as const].map(stageName);
  terminal.out(
    `${wrapped(`Wrote ${path}: a row for each thing seen. Its two examples are left out wherever the log is read; delete them. Stages of ${lifeCycle.commonName}: ${stages.join(", ")}.`)}\n`,
  );
}

/** A header and two rows that show how they are filled; nothing in them was seen. */
function templateText({ stages }: LifeCycle): string {
  const second = stages[1]?.stage ?? "adult";
  const hatches = second === "larva" || second === "instar-1";
  const pupates = stages.some(({ stage }) => stage === "pupa");
  return csvText(LOG_HEADER, [
    [hatches ? "hatched" : second, "2026-06-11", null, 4, null, null, null, `${EXAMPLE_NOTE}.`, null, null],
    [
      pupates ? "pupated" : "emerged",
      "2026-06-25",
      "18:30",
      3,
      "cage A",
      null,
      "2026-06-24",
      `${EXAMPLE_NOTE}. One still hangs.`,
      null,
      null,
    ],
  ]);
}
