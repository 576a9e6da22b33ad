import { type Instant, formatInstant } from "../../time/zone.ts";
import type { EmergencePlan, ReleaseAdvice, ReleaseLook } from "./release-plan.ts";

const PRACTICE = "common practice, no source";

/**
 * What to do with an adult for which no hour of its first day fits; nothing where one does.
 * @param hungryFrom When its first day is over.
 */
export function adviceFor(
  firstDay: ReleaseLook | null,
  nextDay: ReleaseLook | null,
  hungryFrom: Instant | null,
  zone: string,
): ReleaseAdvice[] {
  if (firstDay === null || hungryFrom === null || firstDay.best !== null) return [];
  const food = formatInstant(hungryFrom, zone);
  return [
    {
      code: "keep",
      from: null,
      mark: PRACTICE,
      message:
        "Keep the adult in its cage and wait for a better hour rather than release it into a poor one.",
    },
    {
      code: "dim-and-cool",
      from: null,
      mark: PRACTICE,
      message: "Keep the cage dim, cool and still, out of direct sun and closed cars, so that it rests.",
    },
    {
      code: "offer-food",
      from: food,
      mark: PRACTICE,
      message:
        "Offer food once its first day is over: fresh flowers that it visits, or thin sugar water on a pad.",
    },
    ...nextDayAdvice(nextDay),
    ...(unseen(firstDay) || unseen(nextDay) ? [MORE_WEATHER] : []),
  ];
}

const MORE_WEATHER: ReleaseAdvice = {
  code: "more-weather",
  from: null,
  mark: PRACTICE,
  message: "Get the weather for the hours that are not judged, and look again: nothing is guessed here.",
};

function nextDayAdvice(look: ReleaseLook | null): ReleaseAdvice[] {
  if (look === null) return [];
  const message =
    look.best === null
      ? `The next day was looked at too. ${look.absence?.message ?? ""}`.trim()
      : `The next day was looked at too: its best hour begins at ${look.best.from.slice(0, 16).replace("T", " ")}.`;
  return [{ code: "next-day", from: look.best?.from ?? null, mark: PRACTICE, message }];
}

function unseen(look: ReleaseLook | null): boolean {
  return look !== null && look.best === null && !look.complete;
}

/** The best hour of the two days, or why there is none. */
export function bestOf(
  firstDay: ReleaseLook,
  nextDay: ReleaseLook | null,
): Pick<EmergencePlan, "best" | "absence"> {
  const best = firstDay.best ?? nextDay?.best ?? null;
  return { best, absence: best === null ? firstDay.absence : null };
}
