import { greatest } from "../../numeric/extremes.ts";
import { given, givenList, givenText } from "../../given.ts";
import { counted } from "../../plain-words.ts";
import { type LogEntry, checkLog, fateOf } from "../../cohort/log.ts";
import { stageName } from "../../species/stage-names.ts";
import { bullet, wrapped } from "../layout/text-layout.ts";

/** A row that no longer counts, as `readLog` tells of it. */
export interface OldRow {
  readonly row: number;
  readonly by: number;
  readonly how: string;
  readonly was: readonly string[];
}

/**
 * A log as it stands, as plain text of at most 80 columns: what counts, then what later rows superseded.
 * @param options.heading Which state of the log it is. Default the present one.
 */
export function logText(
  entries: readonly LogEntry[],
  superseded: readonly OldRow[],
  options: { readonly heading?: string } = {},
): string {
  checkLog(entries);
  givenList(superseded, ["superseded"]);
  given(options, ["options"], "an object of options");
  const { heading = "The log as it stands" } = options;
  givenText(heading, ["heading"]);
  const width = greatest([0, ...entries.map(({ on }) => on.length)]);
  const lines = entries.map((entry) => {
    const place = `  ${String(entry.row ?? "-").padStart(4)}  `;
    return wrapped(entryText(entry), {
      first: `${place}${entry.on.padEnd(width)}  `,
      rest: " ".repeat(place.length + width + 2),
    });
  });
  const old = superseded.map(({ row, by, how, was }) =>
    bullet(`row ${row}, ${how} by row ${by}: ${was.join(", ")}`),
  );
  return [
    wrapped(heading.toUpperCase()),
    ...(lines.length > 0 ? [`  ${"row".padStart(4)}  seen on`, ...lines] : ["  Nothing."]),
    ...(old.length > 0 ? ["", "ROWS THAT NO LONGER COUNT", ...old] : []),
    "",
  ].join("\n");
}

/** One entry in a few words, such as `pupa, 3 animals (group A): one small`. */
export function entryText(entry: LogEntry): string {
  const { stage, count, cohort, notYet, note } = entry;
  const fate = fateOf(entry);
  return [
    stageName(stage),
    `, ${counted(count, "animal")}`,
    fate === "seen" ? "" : ` ${fate}`,
    notYet === undefined ? "" : `, not yet on ${notYet}`,
    cohort === null ? "" : ` (group ${cohort})`,
    note === null ? "" : `: ${note}`,
  ].join("");
}
