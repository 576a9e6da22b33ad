import type { Note } from "../../notes.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import type { Target } from "./start-plan.ts";

/** What a chance leaves out, said with every one of them. */
export function startNotes(
  { hours, start }: Target,
  temperatures: TemperatureSeries | WeatherEnsemble | null,
): Note[] {
  const notes: Note[] = [
    {
      code: "chance-of-the-living",
      message: `The chances are those of animals that live and develop as usual. They do not hold the error of the constants, deaths, or parasites${start.stage === "egg" ? ", and eggs that never hatch" : ""}.`,
    },
  ];
  if (temperatures === null) {
    notes.push({
      code: "room-held-exactly",
      message:
        "The room is taken to be held at its temperature day and night. Measure it where the animals are: a degree moves the day.",
    });
  } else if (temperatures.kind !== "ensemble") {
    notes.push({
      code: "weather-taken-as-known",
      message:
        "The temperatures are taken as certain, so the chances hold what differs between animals and not the weather. Past years would put the weather in.",
    });
  }
  if (hours !== undefined) {
    notes.push({
      code: "hours-of-their-own",
      message:
        "The time of day follows from the temperatures alone. Many insects hatch, molt or emerge at hours of their own, often in the morning: trust the day more than the hours.",
    });
  }
  return notes;
}
