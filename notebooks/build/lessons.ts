import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import type { Lesson } from "./way.ts";

/** What the index says of a notebook beside its heading. */
type About = Pick<Lesson, "name" | "idea" | "before" | "minutes">;

/** The notebooks in the order of reading: each has one idea and needs only those before it. */
const ORDER: readonly About[] = [
  {
    name: "degree-day",
    idea: "How one day's temperatures become one number, and how days add up.",
    before: "nothing",
    minutes: 20,
  },
  {
    name: "first-season",
    idea: "How a find and the temperatures become dates, each with a window, and how a log is set beside them.",
    before: "what a degree-day is",
    minutes: 25,
  },
  {
    name: "which-method",
    idea: "How much a date depends on the way the hours between a day's lowest and highest temperature are drawn.",
    before: "what a degree-day is",
    minutes: 30,
  },
  {
    name: "learning-season",
    idea: "How each evening's log narrows what is still to come.",
    before: "what a window of dates is",
    minutes: 30,
  },
  {
    name: "class-trial",
    idea: "How a class finds a lower threshold of its own from animals kept at several temperatures.",
    before: "what a threshold is",
    minutes: 40,
  },
  {
    name: "class-day",
    idea: "On which day to start so that something can be seen on a wanted one, and how sure that is.",
    before: "what a window of dates is",
    minutes: 30,
  },
  {
    name: "broods",
    idea: "How many broods a season has room for, and when the last eggs can still become adults.",
    before: "what a window of dates is",
    minutes: 30,
  },
];

/**
 * The notebooks at hand in the order of reading, each with the heading that it begins with.
 * @param sources Paths of the notebooks' sources.
 */
export async function lessonsOf(sources: readonly string[]): Promise<Lesson[]> {
  const lessons: Lesson[] = [];
  for (const source of sources) {
    const name = basename(source, ".html");
    const about = ORDER.find((one) => one.name === name);
    const heading = /^\s*# (.+)$/m.exec(await readFile(source, "utf8"))?.[1];
    if (about === undefined || heading === undefined) {
      throw new Error(`${source} has no ${heading === undefined ? "heading" : "line in lessons.ts"}`);
    }
    lessons.push({ ...about, heading });
  }
  const placeOf = ({ name }: Lesson): number => ORDER.findIndex((one) => one.name === name);
  return lessons.sort((a, b) => placeOf(a) - placeOf(b));
}
