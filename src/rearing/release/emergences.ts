import { givenList } from "../../given.ts";
import { InputError, shown } from "../../errors.ts";
import type { Forecast, Window } from "../../forecast/question/result.ts";
import { type Instant, parseMoment } from "../../time/zone.ts";
import type { EmergencePlan } from "./release-plan.ts";

/** Adults that were seen to have emerged. */
export interface SeenEmergence {
  /** ISO 8601 time, such as `2026-07-05T09:30`, or with an offset. */
  readonly at: string;
  /** Which animal, where it has a name. */
  readonly animal?: string;
  /** How many. Default 1. */
  readonly count?: number;
  /** Crumpled, weak or known to be infected: it is listed apart and gets no hours. Default false. */
  readonly unfit?: boolean;
}

/** A forecast, the window in which adults emerge, or emergences that were seen. */
export type Emergences = Forecast | Window | readonly SeenEmergence[];

/** An emergence on the time axis. */
export interface Emergence extends Pick<EmergencePlan, "which" | "animal" | "count"> {
  /** `null` where a forecast does not reach it, for the reason in `unknown`. */
  readonly at: Instant | null;
  readonly unknown: string;
  readonly unfit: boolean;
}

const NOT_REACHED = "When it emerges is not known.";

/** Whether emergences were seen rather than forecast. */
export function wereSeen(given: Emergences): given is readonly SeenEmergence[] {
  return Array.isArray(given);
}

/** The forecast itself, or `null` for anything else. */
export function forecastOf(given: Emergences): Forecast | null {
  return !wereSeen(given) && "stages" in given ? given : null;
}

/**
 * Emergences on the time axis.
 * @throws {InputError} `invalid-found` for a forecast without an adult, a list without an animal, or a count that
 *   is not a whole number from 1; `invalid-instant`, `invalid-day` for a time that is none.
 */
export function emergencesOf(given: Emergences, zone: string): Emergence[] {
  if (wereSeen(given)) {
    givenList(given, ["emergences"]);
    return seen(given, zone);
  }
  const forecast = forecastOf(given);
  const adult = forecast?.stages.find(({ stage }) => stage === "adult");
  if (forecast !== null && adult === undefined) {
    throw new InputError(
      "invalid-found",
      "the forecast has no adult; one that ends with the adult is needed.",
      {
        path: ["emergences"],
        value: forecast.stages.length,
      },
    );
  }
  const begins: Window = adult?.begins ?? windowOf(given);
  const unknown = adult?.absence?.message ?? NOT_REACHED;
  return (["early", "expected", "late"] as const).map((which) => {
    const text = begins[which];
    const at = text === null ? null : timeOf(text, zone, ["emergences", which]);
    return { which, animal: null, count: null, at, unknown, unfit: false };
  });
}

function windowOf(given: Exclude<Emergences, readonly SeenEmergence[]>): Window {
  if ("early" in given) return given;
  throw new InputError("invalid-found", "the emergences are neither a forecast, nor a window, nor a list.", {
    path: ["emergences"],
  });
}

function seen(animals: readonly SeenEmergence[], zone: string): Emergence[] {
  if (animals.length === 0) {
    throw new InputError("invalid-found", "the list of emergences is empty; it must have at least one.", {
      path: ["emergences"],
      value: 0,
    });
  }
  return animals.map(({ at, animal, count = 1, unfit = false }, i) => {
    if (!Number.isSafeInteger(count) || count < 1) {
      const path = ["emergences", i, "count"];
      throw new InputError(
        "invalid-found",
        `${path.join(".")} is ${shown(count)}; it must be a whole number from 1.`,
        { path, value: count },
      );
    }
    const instant = timeOf(at, zone, ["emergences", i, "at"]);
    return { which: "seen", animal: animal ?? null, count, at: instant, unknown: NOT_REACHED, unfit };
  });
}

// A day alone is not enough: four hours after midnight and after noon are different hours of the day.
function timeOf(text: string, zone: string, path: readonly (string | number)[]): Instant {
  const { instant } = parseMoment(text, zone, path);
  if (instant !== null) return instant;
  throw new InputError(
    "invalid-instant",
    `${path.join(".")} is ${shown(text)}, a day; it must have a time, such as ${text}T09:30.`,
    { path, value: text },
  );
}
