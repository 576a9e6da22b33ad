import { InputError, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { STAGE_IDS, type StageId } from "../species/life-cycle.ts";
import { type LifeTableRow, type StageCounts, lifeTable } from "./life-table.ts";
import { type LogEntry, type LogFate, checkLog, fateOf } from "./log.ts";

/** What {@link lifeTableFromLog} needs beside the log. */
export interface LogTableOptions {
  /**
   * Stages in the order of life, the last being the one to be reached: `["egg", ..., "pupa", "adult"]`. A
   * hang that is not among them counts as the end of the larval stage before it.
   */
  readonly stages: readonly StageId[];
  /** Animals at the begin of the first stage. Default: as many as the log tells of. */
  readonly count?: number;
  /**
   * What became of animals that neither reached the next stage nor have an entry: `censored` when they are
   * still in the stage or were not written down, `died` when the log is closed and whoever is missing is
   * dead. Default `censored`.
   */
  readonly unaccounted?: "censored" | "died";
  /** How sure the intervals should be. Default 0.95. */
  readonly level?: number;
}

/** Life table of a log. */
export interface LogTable {
  /** One row for each stage but the last. */
  readonly rows: readonly LifeTableRow[];
  /** Animals that reached the last stage. */
  readonly reached: number;
  /** Stages in which animals went missing without an entry, and how many. */
  readonly unaccounted: readonly { readonly stage: StageId; readonly count: number }[];
  /** What a reader should know, one sentence each. */
  readonly remarks: readonly string[];
}

/**
 * Life table from a log: how many animals began each stage, died in it or were lost in it.
 *
 * An animal in a later stage, or dead in one, has gone through all stages before, whether or not somebody saw
 * it begin them. So a stage was entered by the greater of two numbers: those seen to begin it, and those that
 * the log knows to have been in it or beyond.
 * @param entries One cohort; choose it before, where a log holds several.
 * @param options The stages, the number of animals at the start and what to think of missing ones.
 * @throws {InputError} what `checkLog` and `lifeTable` throw; `unknown-stage` for an entry outside the stages;
 *   `invalid-option` for fewer than two stages; `invalid-log` when the log tells of more animals than `count`.
 * @example
 * lifeTableFromLog(
 *   [logEntry({ stage: "pupa", on: "2026-07-04", count: 9 }), logEntry({ stage: "larva", on: "2026-06-20", fate: "died" })],
 *   { stages: ["larva", "pupa"], count: 10 },
 * ).rows[0]?.survival // → 0.9
 */
export function lifeTableFromLog(entries: readonly LogEntry[], options: LogTableOptions): LogTable {
  given(options, ["options"], "an object of options", "stages");
  const { stages, unaccounted: missingOnes = "censored", level } = options;
  checkOptions(options);
  const seen = new Map<StageId, number>();
  const died = new Map<StageId, number>();
  const lost = new Map<StageId, number>();
  const hanging = new Map<LogFate, number>();
  checkLog(entries).forEach((entry, i) => {
    const fate = fateOf(entry);
    const into = { seen, died, lost }[fate];
    const stage = stageWithin(entry.stage, stages, i);
    // Whoever hangs had begun the larval stage before, whether or not somebody saw that.
    if (stage !== entry.stage) hanging.set(fate, (hanging.get(fate) ?? 0) + entry.count);
    if (stage !== entry.stage && fate === "seen") return;
    into.set(stage, (into.get(stage) ?? 0) + entry.count);
  });
  const of = (map: ReadonlyMap<StageId, number>, stage: StageId): number => map.get(stage) ?? 0;
  // Those seen to hang that neither went on nor died or were lost there.
  const overdue = (next: number): number => {
    const ended = (hanging.get("died") ?? 0) + (hanging.get("lost") ?? 0);
    return Math.max(0, (hanging.get("seen") ?? 0) - ended - next);
  };
  const entered: number[] = [];
  for (let i = stages.length - 1; i >= 0; i--) {
    const stage = stages[i] ?? "adult";
    const next = entered[0] ?? 0;
    const still = stage === lastLarval(stages) ? overdue(next) : 0;
    const known = of(died, stage) + of(lost, stage) + next + still;
    entered.unshift(Math.max(of(seen, stage), known));
  }
  const told = entered[0] ?? 0;
  if (options.count !== undefined) {
    if (options.count < told) {
      throw new InputError(
        "invalid-log",
        `count is ${options.count}, but the log tells of ${told} animals; correct one of them.`,
        { path: ["count"], value: options.count },
      );
    }
    entered[0] = options.count;
  }
  const unaccounted: { stage: StageId; count: number }[] = [];
  const counts = stages.slice(0, -1).map((stage, i): StageCounts => {
    const [begun, next] = [entered[i] ?? 0, entered[i + 1] ?? 0];
    const missing = begun - next - of(died, stage) - of(lost, stage);
    if (missing > 0) unaccounted.push({ stage, count: missing });
    const dead = missingOnes === "died" ? missing : 0;
    return {
      stage,
      entered: begun,
      died: of(died, stage) + dead,
      censored: begun - next - of(died, stage) - dead,
    };
  });
  return {
    rows: lifeTable(counts, level === undefined ? {} : { level }),
    reached: entered.at(-1) ?? 0,
    unaccounted,
    remarks: remarksOn(unaccounted, missingOnes),
  };
}

function remarksOn(unaccounted: LogTable["unaccounted"], as: "censored" | "died"): string[] {
  if (unaccounted.length === 0) return [];
  const list = unaccounted.map(({ stage, count }) => `${count} in ${stage}`).join(", ");
  const taken =
    as === "died"
      ? "they were taken as dead"
      : "they were taken as still in it or not written down, so survival is too high if they died";
  return [`Animals without a next stage, a death or a loss in the log: ${list}; ${taken}.`];
}

function lastLarval(stages: readonly StageId[]): StageId | undefined {
  return stages.filter((one) => one === "larva" || one.startsWith("instar")).at(-1);
}

function stageWithin(stage: StageId, stages: readonly StageId[], index: number): StageId {
  if (stages.includes(stage)) return stage;
  const larval = lastLarval(stages);
  if (stage === "prepupa" && larval !== undefined) return larval;
  const path = ["log", index, "stage"];
  throw new InputError(
    "unknown-stage",
    `${path.join(".")} is ${shown(stage)}; it must be one of the stages asked for, ${stages.join(", ")}.`,
    { path, value: stage },
  );
}

function checkOptions({ stages, count, unaccounted = "censored" }: LogTableOptions): void {
  givenList(stages, ["stages"]);
  const unknown = stages.find((stage) => !STAGE_IDS.includes(stage));
  if (unknown !== undefined) {
    throw new InputError(
      "unknown-stage",
      `stages has ${shown(unknown)}; each must be one of ${STAGE_IDS.join(", ")}.`,
      {
        path: ["stages"],
        value: unknown,
      },
    );
  }
  if (stages.length < 2) {
    throw new InputError(
      "invalid-option",
      `there ${stages.length === 1 ? "is one stage" : "are no stages"}; give at least one to live through and one to reach.`,
      { path: ["stages"], value: stages.length },
    );
  }
  if (count !== undefined && !(Number.isSafeInteger(count) && count >= 1)) {
    throw new InputError(
      "invalid-option",
      `count is ${shown(count)}; it must be a whole number of animals from 1.`,
      { path: ["count"], value: count },
    );
  }
  // Callers without types may hand over anything.
  const given: string = unaccounted;
  if (given === "censored" || given === "died") return;
  throw new InputError("invalid-option", `unaccounted is ${shown(given)}; it must be censored or died.`, {
    path: ["unaccounted"],
    value: given,
  });
}
