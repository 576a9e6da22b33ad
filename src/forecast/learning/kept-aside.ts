import { type LogEntry, fateOf } from "../../cohort/log.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { DAY_MS, type Instant, type Zone, formatInstant } from "../../time/zone.ts";
import type { Moment } from "../arrivals/done-by.ts";
import type { Learned } from "../question/learned.ts";
import type { Span } from "./log-span.ts";

/** An entry of the log that tells of the pace, with the looks between which its stage began. */
export interface Seen {
  readonly entry: LogEntry;
  readonly span: Span;
}

/** Why an entry says nothing of the pace; `null` where it does. */
export function notAhead(
  entry: LogEntry,
  ahead: ReadonlySet<StageId | "darkening">,
  found: StageId,
): string | null {
  const what = `${stageName(entry.stage)}, ${entry.on}`;
  const fate = fateOf(entry);
  if (fate !== "seen")
    return `${what}: ${fate === "died" ? "a death" : "a loss"} says nothing of the pace; the entry counts for survival only.`;
  return ahead.has(entry.stage)
    ? null
    : `${what}: the animals were found as ${stageName(found)}, so this stage is not ahead of them.`;
}

/** Why an entry cannot be, by what was seen before it. */
export function contradiction(
  { entry, span }: Seen,
  starts: readonly Moment[],
  from: Learned["from"],
  found: Instant,
  zone: Zone,
): string {
  const early = span.to <= found;
  const earliest = early ? found : Math.min(...starts.map(({ at }) => at));
  const before = from === null || early ? "the find" : `the ${stageName(from.stage)}`;
  const what = `${stageName(entry.stage)}, ${entry.on}${entry.row === null ? "" : ` (row ${entry.row})`}`;
  const since = formatInstant(earliest, zone).slice(0, 10);
  return span.to <= earliest
    ? `${what}: this is before ${before} (${since}); one of the two dates must be wrong. The entry is kept aside.`
    : `${what}: at these temperatures no animal goes from ${before} (${since}) to this stage in ${((span.to - earliest) / DAY_MS).toFixed(1)} days, even at an unusual pace. Check the dates and the temperatures. The entry is kept aside.`;
}
