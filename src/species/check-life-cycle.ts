import { InputError, type InputPath, isUsable, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { CUTOFFS } from "../response/linear.ts";
import { HANDLINGS, type LifeCycle, MARKS, STAGE_IDS, type Sourced, type StageNeeds } from "./life-cycle.ts";

const KEBAB_CASE = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/**
 * The life cycle itself when its numbers make sense together.
 *
 * Stages stand in the order of life, each once, without a hole between instars; `larva` stands for all
 * instars and so never beside one. Thermal constants are positive, lower thresholds are below upper ones,
 * shares and coefficients lie in their ranges, and every number names its source. Words of a fixed list (cutoffs,
 * marks, what there is to know when handling) are words of that list.
 * @throws {InputError} `invalid-life-cycle`, with the path of what is wrong.
 */
export function checkLifeCycle(lifeCycle: LifeCycle): LifeCycle {
  given(lifeCycle, [], "a life cycle, as findSpecies returns it");
  if (typeof lifeCycle.species !== "string" || !KEBAB_CASE.test(lifeCycle.species)) {
    throw refused(["species"], lifeCycle.species, "a name in lower case with hyphens, such as pieris-rapae");
  }
  for (const field of ["latinName", "commonName"] as const) {
    if (!isText(lifeCycle[field])) throw refused([field], lifeCycle[field], "a name");
  }
  givenList(lifeCycle.stages, ["stages"], "a list of stages");
  if (lifeCycle.stages.length === 0)
    throw refused(["stages"], lifeCycle.stages, "a list with at least one stage");
  lifeCycle.stages.forEach((needs, i) => {
    checkOrder(lifeCycle.stages, i);
    checkNeeds(needs, ["stages", i]);
  });
  checkShares(lifeCycle);
  const correlation = sourced(lifeCycle.stageCorrelation, ["stageCorrelation"]);
  if (correlation < 0 || correlation > 1) {
    throw refused(["stageCorrelation", "value"], correlation, "a correlation from 0 to 1");
  }
  checkHandling(lifeCycle);
  return lifeCycle;
}

/**
 * Refuses unknown words on how to handle a species, and none at all: a misspelt one would silence its caution.
 * @throws {InputError} `invalid-life-cycle`, `invalid-option`.
 */
export function checkHandling({ handling }: LifeCycle): void {
  givenList(handling, ["handling"], "a list, empty where nothing is known");
  handling.forEach((one, i) => {
    checkWord(one, HANDLINGS, ["handling", i]);
  });
}

function checkWord(word: string, words: readonly string[], path: InputPath): void {
  if (!words.includes(word)) throw refused(path, word, `one of ${words.join("; ")}`);
}

function isText(value: unknown): boolean {
  return typeof value === "string" && value.trim() !== "";
}

function isInstar(stage: string): boolean {
  return stage.startsWith("instar-");
}

// One stage against the one before it.
function checkOrder(stages: readonly StageNeeds[], i: number): void {
  const stage = stages[i]?.stage;
  const path = ["stages", i, "stage"];
  const order = STAGE_IDS.findIndex((id) => id === stage);
  if (
    stage === undefined ||
    order < 0 ||
    order >= STAGE_IDS.indexOf("adult") ||
    STAGE_IDS[order] === "prepupa"
  ) {
    throw refused(
      path,
      stage,
      "egg, larva, instar-1 to instar-5, or pupa (the hang is a share of the last larval stage)",
    );
  }
  const before = stages[i - 1]?.stage;
  if (stages.slice(0, i).some((earlier) => earlier.stage === stage)) {
    throw refused(path, stage, "a stage that was not given before");
  }
  if (before === undefined) return;
  if (STAGE_IDS.indexOf(before) > order) {
    throw refused(path, stage, `a later stage of life than ${before}, which stands before it`);
  }
  if (isInstar(stage) && stages.some((other) => other.stage === "larva")) {
    throw refused(path, stage, "left out where larva stands for all instars, or larva left out");
  }
  if (isInstar(stage)) {
    const expected = isInstar(before) ? STAGE_IDS[STAGE_IDS.indexOf(before) + 1] : "instar-1";
    if (stage !== expected) throw refused(path, stage, `${expected}, the instar that follows ${before}`);
  }
}

function checkNeeds(needs: StageNeeds, path: InputPath): void {
  const degreeDays = sourced(needs.degreeDays, [...path, "degreeDays"]);
  if (degreeDays <= 0) throw refused([...path, "degreeDays", "value"], degreeDays, "above 0 °C·day");
  const lower = sourced(needs.lower, [...path, "lower"]);
  if (needs.upper !== null) {
    const upper = sourced(needs.upper, [...path, "upper"]);
    if (lower >= upper) {
      throw refused([...path, "lower", "value"], lower, `below the upper threshold (${upper} °C)`);
    }
  } else if (needs.cutoff !== "none") {
    throw refused([...path, "cutoff"], needs.cutoff, "none where no upper threshold is given");
  }
  checkWord(needs.cutoff, CUTOFFS, [...path, "cutoff"]);
  const cv = sourced(needs.cv, [...path, "cv"]);
  if (cv < 0 || cv >= 1)
    throw refused([...path, "cv", "value"], cv, "a coefficient of variation from 0 to below 1");
  if (needs.tested === null) return;
  given(needs.tested, [...path, "tested"], "null, or an object with low and high");
  checkWord(needs.tested.mark, MARKS, [...path, "tested", "mark"]);
  const { low, high } = needs.tested;
  if (!isUsable(low)) throw refused([...path, "tested", "low"], low, "a finite number");
  if (!isUsable(high)) throw refused([...path, "tested", "high"], high, "a finite number");
  if (low > high)
    throw refused([...path, "tested", "low"], low, `at most the highest tested temperature (${high} °C)`);
}

function checkShares({ hang, darkening, stages }: LifeCycle): void {
  if (hang !== null) {
    share(hang, ["hang"]);
    if (!stages.some(({ stage }) => stage === "larva" || isInstar(stage))) {
      throw refused(["hang"], hang.value, "null where there is no larval stage to be a share of");
    }
  }
  if (darkening !== null) {
    share(darkening, ["darkening"]);
    if (!stages.some(({ stage }) => stage === "pupa")) {
      throw refused(["darkening"], darkening.value, "null where there is no pupal stage to be a share of");
    }
  }
}

function share(part: Sourced, path: InputPath): void {
  const value = sourced(part, path);
  if (value <= 0 || value >= 1) throw refused([...path, "value"], value, "a share above 0 and below 1");
}

// The number of a sourced figure; one without a source has no place in a life cycle.
function sourced(figure: Sourced, path: InputPath): number {
  given(figure, path, "an object with value, mark and source");
  const { value } = figure;
  if (!isUsable(value)) throw refused([...path, "value"], value, "a finite number");
  checkWord(figure.mark, MARKS, [...path, "mark"]);
  if (!isText(figure.source))
    throw refused([...path, "source"], figure.source, "where the number comes from");
  return value;
}

function refused(path: InputPath, value: unknown, mustBe: string): InputError {
  return new InputError("invalid-life-cycle", `${path.join(".")} is ${shown(value)}; it must be ${mustBe}.`, {
    path,
    value,
  });
}
