import { given } from "../given.ts";
import type { LifeCycle } from "./life-cycle.ts";

/**
 * Refuses what is no life cycle at a glance, where only its names are read; `checkLifeCycle` looks through all of it.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function givenLifeCycle(lifeCycle: LifeCycle): void {
  const expected = "a life cycle, such as findSpecies returns";
  given(lifeCycle, ["lifeCycle"], expected, "stages", "species", "latinName");
}
