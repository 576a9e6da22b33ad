import { describe, expect, test } from "vitest";
import { decodeText, readLifeCycle } from "../../src/read/index.ts";
import { SPECIES } from "../../src/species/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { fixture } from "./fixture.ts";

const text = decodeText(fixture("read/own-species.json"));
// A fresh value each time, to change one thing in.
const own = () => JSON.parse(text);

describe("readLifeCycle", () => {
  test("takes a user's own species", () => {
    expect(readLifeCycle(own())).toEqual(own());
  });

  test.each(SPECIES.map((lifeCycle) => [lifeCycle.species, lifeCycle] as const))(
    "takes %s through JSON",
    (_, lifeCycle) => {
      expect(readLifeCycle(JSON.parse(JSON.stringify(lifeCycle)))).toEqual(lifeCycle);
    },
  );

  test("names a field that is missing, mistyped or of the wrong kind", () => {
    const without = own();
    delete without.hang;
    expect(refusalOf(() => readLifeCycle(without))).toMatchObject({
      code: "invalid-life-cycle",
      path: ["hang"],
    });
    const mistyped = own();
    mistyped.stages[1].lowr = mistyped.stages[1].lower;
    const error = refusalOf(() => readLifeCycle(mistyped));
    expect(error.path).toEqual(["stages", 1, "lowr"]);
    expect(error.message).toContain("did you mean lower");
    const wrong = own();
    wrong.stages[0].degreeDays.value = "45";
    expect(refusalOf(() => readLifeCycle(wrong))).toMatchObject({
      path: ["stages", 0, "degreeDays", "value"],
      value: "45",
    });
    expect(refusalOf(() => readLifeCycle(null)).message).toContain(
      "the life cycle is null; it must be an object",
    );
  });

  test("goes on to the checks of meaning", () => {
    const inverted = own();
    inverted.stages[0].lower.value = 33;
    expect(refusalOf(() => readLifeCycle(inverted)).message).toBe(
      "stages.0.lower.value is 33; it must be below the upper threshold (32 °C).",
    );
  });

  test("keys of prototypes do no harm", () => {
    const polluted = text.replace('"hang"', '"__proto__": { "polluted": true }, "hang"');
    expect(refusalOf(() => readLifeCycle(JSON.parse(polluted))).code).toBe("invalid-life-cycle");
    expect("polluted" in {}).toBe(false);
  });
});
