import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { CURVE_METHODS } from "../src/diurnal/method.ts";
import { CUTOFFS } from "../src/response/linear.ts";
import { SPECIES } from "../src/species/catalogue.ts";
import { STAGE_IDS } from "../src/species/life-cycle.ts";
import { stageName } from "../src/species/stage-names.ts";

const page = readFileSync(new URL("../docs/glossary.md", import.meta.url), "utf8");

/** Each entry with its words: those in bold, and those in brackets right after them. */
const ENTRIES = [...page.matchAll(/^- (\*\*[\s\S]*?)(?=^- |^#|(?![\s\S]))/gm)].map(([, text = ""]) => {
  const [head = "", ...rest] = text.split(/:\s/);
  const bold = [...head.matchAll(/\*\*(.+?)\*\*/gs)].map(([, word = ""]) => word.replace(/\s+/g, " "));
  const inBrackets = /\*\* \(([\s\S]+)\)$/.exec(head)?.[1] ?? "";
  return { words: [...bold, ...inBrackets.split(", ")].filter(Boolean), sentence: rest.join(": ").trim() };
});

const DEFINED = new Set(ENTRIES.flatMap(({ words }) => words));

/** Field terms on screens, in tables and in results. */
const SCREEN_WORDS = [
  ...["degree-day", "degree-days", "lower threshold", "upper threshold", "lower developmental threshold"],
  ...["upper developmental threshold", "thermal constant", "cutoff", "horizontal cutoff", "biofix"],
  ...["single sine", "double sine", "single triangle", "double triangle", "daily extremes", "normals", "gap"],
  ...["instar", "eclosion", "emergence", "molt", "pupa darkens", "milestone", "diapause", "brood", "cohort"],
  ...["early, expected, late", "window", "differ by", "CV", "pace", "ensemble", "past years", "mixture"],
  ...["interval-censored", "not yet", "kept aside", "bias", "error", "CRPS", "coverage", "in the window"],
  ...["skill", "lead", "days known", "hindcast", "AICc", "+/-", "95 % sure", "life table", "censored"],
  ...["survival", "lived", "unknown", "optimum", "trial", "x-intercept", "reduced major axis", "rate model"],
  ...[
    "mark",
    "note",
    "caution",
    "chance",
    "station",
    "reading",
    "local clock",
    "pre-laying time",
    "handling",
  ],
];

const marks = SPECIES.flatMap(({ stages }) =>
  stages.flatMap(({ degreeDays, cv }) => [degreeDays.mark, cv.mark]),
);

describe("docs/glossary.md", () => {
  it.each([
    ...new Set([...SCREEN_WORDS, ...CURVE_METHODS, ...CUTOFFS, ...STAGE_IDS.map(stageName), ...marks]),
  ])("defines %s", (word) => {
    expect(DEFINED).toContain(word);
  });

  it("says each thing once, in a whole sentence or two", () => {
    const words = ENTRIES.flatMap((entry) => entry.words);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    for (const { words, sentence } of ENTRIES) {
      expect(sentence, words.join()).toMatch(/\.$/);
      expect(sentence.length, words.join()).toBeGreaterThan(20);
    }
  });
});
