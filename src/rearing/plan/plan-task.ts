import type { CivilDay } from "../../time/civil-day.ts";
import type { Leaves } from "./foliage-outlook.ts";
import type { PlanAnimals } from "./plan-cohort.ts";

/** Things to do, in the order of the day. Stable across releases. */
export const TASK_CODES = [
  "do-not-disturb",
  "watch-emergence",
  "wings-drying",
  "watch-hatch",
  "clean",
  "split-cage",
  "fresh-foliage",
  "move-pupae",
  "release",
  "hold",
  "keep-in",
  "freeze",
] as const;

/** What a task is about. */
export type TaskCode = (typeof TASK_CODES)[number];

/** When in the day a task is done. */
export type DayPart = "all day" | "morning" | "midday" | "evening";

/** One thing to do for one cohort on one day. */
export interface PlanTask {
  readonly code: TaskCode;
  readonly part: DayPart;
  readonly cohort: string;
  /** Animals that it is about, as expected if all live; `null` where it is about the cage. */
  readonly animals: number | null;
  /** Leaves for the day; `null` for other tasks, and where no need is known. */
  readonly leaves: Leaves | null;
  /** The day that it was moved from, because animals rest or nobody is there; else `null`. */
  readonly movedFrom: CivilDay | null;
  /** One to three plain sentences. */
  readonly message: string;
}

/** A task, with what it does not need left empty. */
export function planTask(
  { name }: PlanAnimals,
  code: TaskCode,
  part: DayPart,
  what: Pick<PlanTask, "animals" | "message"> & Partial<Pick<PlanTask, "leaves" | "movedFrom">>,
): PlanTask {
  const { animals, message, leaves = null, movedFrom = null } = what;
  return { code, part, cohort: name, animals, leaves, movedFrom, message };
}
