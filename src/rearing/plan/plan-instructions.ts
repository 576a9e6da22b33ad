import type { TaskCode } from "./plan-task.ts";

/** What a task means, said once for the whole plan. */
export interface PlanInstruction {
  readonly code: TaskCode;
  readonly title: string;
  /** One to three plain sentences. */
  readonly text: string;
}

/** What each task means. Common practice without a source, except where a comment names one. */
export const PLAN_INSTRUCTIONS: Readonly<Record<TaskCode, PlanInstruction>> = {
  "do-not-disturb": {
    code: "do-not-disturb",
    title: "Do not disturb",
    text: "A larva that sits still is about to molt; one that hangs is about to pupate; a fresh pupa is soft. Do not touch, shake or move them.",
  },
  "watch-emergence": {
    code: "watch-emergence",
    title: "Emergence watch",
    text: "Look early and often. An adult that falls must be able to climb up again and hang free. An adult comes about a day after its pupa darkens.",
  },
  // Hard in 1 to 2 hours: Monarch Watch help page, read.
  "wings-drying": {
    code: "wings-drying",
    title: "Wings drying",
    text: "Leave new adults hanging, untouched, until their wings are hard: one to two hours in a monarch.",
  },
  "watch-hatch": {
    code: "watch-hatch",
    title: "Hatch watch",
    text: "Have tender leaves there before they hatch. Lift no hatchling by hand; carry its leaf.",
  },
  // Container hygiene: monarchparasites.uga.edu and monarchparasites.org, read.
  clean: {
    code: "clean",
    title: "Clean",
    text: "Take out frass and old leaves and wipe the cage dry. Clean hands before and after. Where many rest, take out only what can be reached without touching them.",
  },
  "split-cage": {
    code: "split-cage",
    title: "Split the cage",
    text: "Move leaves with larvae on them into another clean cage; do not pull larvae off. Wait with those that rest.",
  },
  "move-pupae": {
    code: "move-pupae",
    title: "Move pupae",
    text: "Only where they hang badly. Move hard ones alone, neither fresh nor dark, with what they are fixed to, so that an adult can hang free.",
  },
  "fresh-foliage": {
    code: "fresh-foliage",
    title: "Fresh food",
    text: "Clean, unsprayed and not wilted; take out what is left of yesterday. The amounts are a start: correct them by what is left over.",
  },
  // Senses finish within the first 24 h, no feeding needed on the first day: Monarch Watch help page, read.
  hold: {
    code: "hold",
    title: "Hold",
    text: "Adults of the day stay in the cage until their wings are hard and the weather is right, in shade and still air.",
  },
  release: {
    code: "release",
    title: "Release",
    text: "Healthy adults with hard wings only, where they came from, and only where the law allows it. The weather decides the hour: see the release hours.",
  },
  "keep-in": {
    code: "keep-in",
    title: "Keep in",
    text: "Do not release them: this species does not belong everywhere.",
  },
  freeze: {
    code: "freeze",
    title: "Freeze, never release",
    text: "Keep every adult closed in, release none, and freeze what is left over before it is thrown away.",
  },
};
