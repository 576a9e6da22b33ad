import type { Note } from "../../notes.ts";
import { isSpecies } from "../../species/is-species.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { ReleaseSetting } from "./release-look.ts";
import type { EmergencePlan, ReleaseLook } from "./release-plan.ts";

/** What a reader of a plan must know of the weather and of the limits. */
export function releaseNotes(
  plans: readonly EmergencePlan[],
  { criteria }: ReleaseSetting,
  lifeCycle: LifeCycle,
): Note[] {
  const looks = plans.flatMap(({ firstDay, nextDay }) => [firstDay, nextDay]).filter((look) => look !== null);
  const rules = Object.values(criteria).filter(({ mark }) => mark === "common practice, no source").length;
  const notes: Note[] = [...gapNotes(looks), ...endNotes(looks)];
  notes.push({
    code: "common-practice",
    message: `${rules} of the ${Object.keys(criteria).length} limits are common practice without a source, that of the wind among them; set your own where you know better.`,
  });
  if (!isSpecies(lifeCycle, "Danaus plexippus")) {
    notes.push({
      code: "common-practice",
      message: `The flight temperatures were measured on monarchs; ${lifeCycle.latinName} may need others.`,
    });
  }
  return notes;
}

/** Hours of a gap, each once however many animals it matters to. */
function gapNotes(looks: readonly ReleaseLook[]): Note[] {
  const gaps = new Set(
    looks
      .flatMap(({ hours }) =>
        hours.filter(({ weather }) => Object.values(weather).every((value) => value === null)),
      )
      .map(({ from }) => from),
  );
  const [first] = [...gaps].sort();
  if (first === undefined) return [];
  const many = gaps.size === 1 ? "1 hour has" : `${gaps.size} hours have`;
  const message = `${many} no weather, the first from ${first.slice(0, 16).replace("T", " ")} on; they are not judged, nor are hours that need them.`;
  return [{ code: "gaps-in-readings", message }];
}

function endNotes(looks: readonly ReleaseLook[]): Note[] {
  const cut = looks.filter(({ best, complete }) => best !== null && !complete).length;
  if (cut === 0) return [];
  const message =
    "Some hours of the days looked at could not be judged for want of weather; a better one than the best shown may be among them.";
  return [{ code: "series-ends-first", message }];
}
