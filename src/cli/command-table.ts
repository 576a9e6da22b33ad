import type { Command } from "./command.ts";

/** A command before it is loaded: what the list of commands says of it. */
export interface CommandEntry {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  readonly load: () => Promise<Command>;
}

/**
 * The commands under the headings of the list, in the order in which a season needs them. Each is loaded when
 * it is asked for: the list needs none of them, and a command only what it uses itself.
 */
export const COMMAND_GROUPS: readonly (readonly [heading: string, commands: readonly CommandEntry[]])[] = [
  [
    "Before the season",
    [
      {
        name: "species",
        summary: "the species at hand, or the constants of one",
        load: async () => (await import("./commands/species.ts")).speciesCommand,
      },
      {
        name: "season",
        summary: "how many broods a year, and until when eggs still become adults",
        load: async () => (await import("./commands/season.ts")).seasonCommand,
      },
      {
        name: "start-for",
        summary: "which start puts the emergence on a wanted day, and how surely",
        load: async () => (await import("./commands/start-for.ts")).startForCommand,
      },
    ],
  ],
  [
    "From the find to the release",
    [
      {
        name: "forecast",
        summary: "the dates of every stage to adult, as a calendar for the wall",
        load: async () => (await import("./commands/forecast.ts")).forecastCommand,
      },
      {
        name: "plan",
        summary: "what to do on each day: watch, feed, clean, leave alone, release",
        load: async () => (await import("./commands/plan.ts")).planCommand,
      },
      {
        name: "log",
        summary: "keeps your log: add, correct, show, share what you saw",
        load: async () => (await import("./commands/log.ts")).logCommand,
      },
      {
        name: "release",
        summary: "the hours that are warm, calm, dry and light enough for release",
        load: async () => (await import("./commands/release.ts")).releaseCommand,
      },
      {
        name: "draw",
        summary: "a picture of a forecast, as an SVG file",
        load: async () => (await import("./commands/draw.ts")).drawCommand,
      },
    ],
  ],
  [
    "Afterwards",
    [
      {
        name: "compare",
        summary: "what was expected beside what you saw",
        load: async () => (await import("./commands/compare.ts")).compareCommand,
      },
      {
        name: "survival",
        summary: "how many of your animals lived, and how many adults to expect",
        load: async () => (await import("./commands/survival.ts")).survivalCommand,
      },
      {
        name: "evaluate",
        summary: "how good forecasts would have been on your own past years",
        load: async () => (await import("./commands/evaluate.ts")).evaluateCommand,
      },
    ],
  ],
  [
    "Temperatures and thresholds",
    [
      {
        name: "room",
        summary: "how your room or cage differs from the weather station",
        load: async () => (await import("./commands/room.ts")).roomCommand,
      },
      {
        name: "degree-days",
        summary: "degree-days day by day, with their running total",
        load: async () => (await import("./commands/degree-days.ts")).degreeDaysCommand,
      },
      {
        name: "methods",
        summary: "what each way of reckoning degree-days makes of your temperatures",
        load: async () => (await import("./commands/methods.ts")).methodsCommand,
      },
      {
        name: "fit",
        summary: "thresholds from your own trials at constant temperatures",
        load: async () => (await import("./commands/fit.ts")).fitCommand,
      },
    ],
  ],
];

/** All of them, in that order. */
export const COMMANDS: readonly CommandEntry[] = COMMAND_GROUPS.flatMap(([, commands]) => commands);
